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
import org.twinrig.translation.Chain;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * A study fitted anew with its captures smoothed, for old graphs that were smoothed.
 *
 * <p>The same captures count as in the study itself, and resonances wander where they do there:
 * what was believed and what the fixtures do does not depend on how an old graph was drawn. Every
 * capture is smoothed before it is pinned and put on bands.
 */
record SmoothedStudy(StudyOutcome outcome, int threads) implements Chain.Captures {

  @Override
  public Translation refit(Smoothing smoothing) {
    Map<String, List<ResonanceWander>> wanders =
        outcome.kinds().stream().collect(Collectors.toMap(KindOutcome::kind, KindOutcome::wanders));
    List<TransferFunction> kinds = new ArrayList<>();
    for (PairedUnits paired :
        new Pairing(outcome.study()).pair(smoothed(smoothing), Unit.Role.FIT)) {
      List<ResonanceWander> wander = wanders.getOrDefault(paired.kind(), List.of());
      kinds.add(MarkedKind.of(outcome.study(), paired, wander, threads).transfer());
    }
    return outcome.translation().withKinds(kinds);
  }

  @Override
  public List<Pairing.OnOldFixture> onOldFixture(Smoothing smoothing) {
    return new Pairing(outcome.study()).onOldFixture(smoothed(smoothing));
  }

  private List<AnchoredCapture> smoothed(Smoothing smoothing) {
    List<AnchoredCapture> accepted = outcome.screening().accepted();
    if (smoothing.equals(Smoothing.NONE)) {
      return accepted;
    }
    List<Capture> smoothed =
        Parallel.map(
            accepted,
            threads,
            a -> a.capture().withResponse(smoothing.apply(a.capture().response())));
    return Anchoring.of(outcome.study().settings(), threads).apply(smoothed).value();
  }
}
