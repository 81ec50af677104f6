package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * A reference curve of the old fixture re-expressed for the new one: the mean transfer of a kind
 * added, {@code to(b) = from(b) + δ̂(b)}.
 *
 * <p>A reference stands for no unit, so its interval is that of the mean transfer, not the much
 * wider one of a unit. Its marks go by that interval, and are lowered where the study lowers them
 * for other causes than the width of a prediction.
 */
public record TranslatedReference(String kind, int units, List<Row> rows) {
  public TranslatedReference {
    rows = List.copyOf(rows);
  }

  /**
   * One band.
   *
   * @param fromDb level of the curve on the old fixture, dB; nothing where it does not cover the
   *     band
   * @param mean its level on the new fixture; nothing where there is none
   */
  public record Row(
      Band band, OptionalDouble fromDb, Optional<Mean> mean, Mark mark, List<Reason> reasons) {
    public Row {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * A level on the new fixture.
   *
   * @param pointwiseHalfDb half-width of the interval for this band alone, dB
   * @param simultaneousHalfDb half-width of the interval that holds for all bands together, dB
   */
  public record Mean(double toDb, double pointwiseHalfDb, double simultaneousHalfDb) {}

  /**
   * Re-expresses a reference.
   *
   * @param curve on the old fixture
   * @param translation what a study found; holds the kind
   */
  public static TranslatedReference of(
      Response curve, TransferFunction kind, Translation translation) {
    Levels from = BandLevels.of(curve, translation.grid());
    List<Row> rows = new ArrayList<>();
    for (int b = 0; b < kind.bands().size(); b++) {
      List<Reason> others = new ArrayList<>(kind.bands().get(b).reasons());
      if (from.isCoarse(b)) {
        others.add(Reason.COARSE_POINTS);
      }
      rows.add(row(from.level(b), kind.bands().get(b), others, translation));
    }
    return new TranslatedReference(kind.kind(), kind.units(), rows);
  }

  private static Row row(
      OptionalDouble from, MarkedBand marked, List<Reason> others, Translation translation) {
    Band band = marked.band();
    if (from.isEmpty()) {
      return new Row(band, from, Optional.empty(), Mark.UNRELIABLE, List.of(Reason.NO_DATA));
    }
    if (!(marked.outcome() instanceof BandOutcome.Fitted fitted)) {
      return new Row(band, from, Optional.empty(), Mark.UNRELIABLE, marked.reasons());
    }
    double half = fitted.mean().halfWidthDb();
    Mark mark = MarkRule.byWidth(translation.tolerance(), band.midHz(), half);
    List<Reason> reasons = new ArrayList<>();
    if (mark != Mark.RELIABLE) {
      reasons.add(Reason.WIDE_PREDICTION);
    }
    for (Reason reason : others) {
      Optional<Mark> best = reason.best();
      if (best.isPresent()) {
        mark = mark.worse(best.get());
        reasons.add(reason);
      }
    }
    Mean mean =
        new Mean(from.getAsDouble() + fitted.mean().meanDb(), half, fitted.simultaneousHalfDb());
    return new Row(
        band, from, Optional.of(mean), mark, reasons.stream().distinct().sorted().toList());
  }

  /** How much of the axis carries a mark: octaves of bands that have a level and this mark. */
  public double octaves(Mark mark) {
    return rows.stream()
        .filter(r -> r.fromDb().isPresent() && r.mark() == mark)
        .mapToDouble(r -> r.band().octaves())
        .sum();
  }
}
