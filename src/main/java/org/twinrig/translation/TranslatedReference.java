package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.Tolerance;

/**
 * A reference curve of the old fixture re-expressed for the new one: the mean transfer of a kind
 * added, {@code to(b) = from(b) + δ̂(b)}.
 *
 * <p>A reference stands for no unit, so its interval is that of the mean transfer, not the much
 * wider one of a unit. Its marks go by that interval, and are lowered where the study lowers them
 * for other causes than the width of a prediction.
 *
 * @param rows one per band; their intervals are those of the mean transfer
 */
public record TranslatedReference(String kind, int units, List<TranslatedBand> rows) {
  public TranslatedReference {
    rows = List.copyOf(rows);
  }

  /** Re-expresses a reference. */
  public static TranslatedReference of(
      Response curve, TransferFunction kind, Translation translation) {
    Levels from = Levels.of(curve, translation.grid());
    List<TranslatedBand> rows = new ArrayList<>();
    for (int b = 0; b < kind.bands().size(); b++) {
      rows.add(row(from, b, kind.bands().get(b), translation.tolerance()));
    }
    return new TranslatedReference(kind.kind(), kind.units(), rows);
  }

  private static TranslatedBand row(Levels curve, int b, MarkedBand marked, Tolerance tolerance) {
    OptionalDouble from = curve.level(b);
    if (from.isEmpty()) {
      return TranslatedBand.unusable(marked.band(), from, List.of(Reason.NO_DATA));
    }
    if (!(marked.outcome() instanceof BandOutcome.Fitted fitted)) {
      return TranslatedBand.unusable(marked.band(), from, marked.reasons());
    }
    RandomEffects.Result mean = fitted.mean();
    TranslatedBand.Predicted level =
        new TranslatedBand.Predicted(
            from.getAsDouble() + mean.meanDb(),
            0,
            new TranslatedBand.Reach(mean.halfWidthDb(), mean.degreesOfFreedom()),
            new TranslatedBand.Reach(fitted.simultaneousHalfDb(), mean.degreesOfFreedom()));
    Mark mark = MarkRule.byWidth(tolerance, marked.band().midHz(), mean.halfWidthDb());
    List<Reason> why = mark == Mark.RELIABLE ? List.of() : List.of(Reason.WIDE_PREDICTION);
    return new TranslatedBand(marked.band(), from, Optional.of(level), mark, why)
        .lowered(marked.reasons())
        .lowered(curve.isCoarse(b) ? List.of(Reason.COARSE_POINTS) : List.of());
  }

  /** How much of the axis carries a mark: octaves of bands that have a level and this mark. */
  public double octaves(Mark mark) {
    return rows.stream()
        .filter(r -> r.fromDb().isPresent() && r.mark() == mark)
        .mapToDouble(r -> r.band().octaves())
        .sum();
  }
}
