package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Parallel;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.response.Smoothing;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * A study fitted anew with its captures smoothed, for old graphs that were smoothed.
 *
 * <p>The same captures count as in the study itself, and resonances wander where they do there:
 * what was believed and what the fixtures do does not depend on how an old graph was drawn. Every
 * capture is smoothed before it is pinned and put on bands.
 */
public final class SmoothedStudy {
  private SmoothedStudy() {}

  /** Fits a study anew. */
  public static Translation of(StudyOutcome outcome, Smoothing smoothing, int threads) {
    List<Capture> smoothed =
        Parallel.map(
            outcome.screening().accepted(),
            threads,
            a -> a.capture().withResponse(smoothing.apply(a.capture().response())));
    List<AnchoredCapture> anchored =
        Anchoring.of(outcome.study().settings(), threads).apply(smoothed).value();
    Map<String, List<ResonanceWander>> wanders =
        outcome.kinds().stream().collect(Collectors.toMap(KindOutcome::kind, KindOutcome::wanders));
    List<TransferFunction> kinds = new ArrayList<>();
    for (PairedUnits paired : new Pairing(outcome.study()).pair(anchored, Unit.Role.FIT)) {
      List<ResonanceWander> wander = wanders.getOrDefault(paired.kind(), List.of());
      kinds.add(MarkedKind.of(outcome.study(), paired, wander, threads).transfer());
    }
    return outcome.translation().withKinds(kinds);
  }
}
