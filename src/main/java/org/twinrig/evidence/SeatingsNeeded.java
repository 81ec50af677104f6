package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.WindowRule;
import org.twinrig.study.PairedUnits;

/**
 * What more seatings buy: the prediction half-width of a kind over a region if old graph and new
 * measurement were both averaged over {@code m} seatings.
 *
 * <p>At a band, {@code half(m) = t_ν·√(max(0, s² - a/ñ_A - s2_B/ñ_B) + a/m + s2_B/m)} with {@code
 * s²} and {@code ν} of {@code regression.ErrorVariance} and {@code a = cᵀ S_A c} where a window
 * predicts and {@code s2_A} where the offset does; over a region the root mean square of it. What
 * is left as {@code m} grows is what seatings cannot cure. Only {@code m} of the graph and of the
 * measurement changes, not the study's own fit, which would also get better: the figures are
 * slightly cautious.
 *
 * <p>Half-widths in dB for each number in {@link #SEATINGS}, and the one that no number goes below.
 */
public record SeatingsNeeded(Region region, List<Double> halfDb, double neverBelowDb) {
  /** The numbers of seatings that are told. */
  public static final List<Integer> SEATINGS = List.of(1, 2, 3, 5, 10);

  public SeatingsNeeded {
    halfDb = List.copyOf(halfDb);
    if (halfDb.size() != SEATINGS.size()) {
      throw new IllegalArgumentException("one half-width for each number of seatings is needed");
    }
    Checks.notNegative(neverBelowDb, "the least half-width in dB");
  }

  /** {@code t²}, what seatings cannot cut and what one seating adds at a band, dB². */
  private record AtBand(double squaredT, double rest, double perSeating) {}

  /** What seatings buy in every region; a region is left out where seating scatter is unknown. */
  public static List<SeatingsNeeded> of(
      PairedUnits paired, KindEstimate estimate, double confidence) {
    List<SeatingsNeeded> rows = new ArrayList<>();
    for (Region region : Region.values()) {
      List<AtBand> bands = new ArrayList<>();
      for (int b = 0; b < estimate.bands().size(); b++) {
        if (estimate.bands().get(b) instanceof BandOutcome.Fitted fitted
            && region.holds(fitted.band())) {
          at(fitted, paired.at(b).to().harmonicMean(), confidence).ifPresent(bands::add);
        }
      }
      if (!bands.isEmpty()) {
        rows.add(
            new SeatingsNeeded(
                region,
                SEATINGS.stream().map(m -> halfDb(bands, m)).toList(),
                halfDb(bands, Double.POSITIVE_INFINITY)));
      }
    }
    return rows;
  }

  private static double halfDb(List<AtBand> bands, double seatings) {
    double squares = 0;
    for (AtBand b : bands) {
      squares += b.squaredT * (b.rest + b.perSeating / seatings);
    }
    return Math.sqrt(squares / bands.size());
  }

  private static Optional<AtBand> at(
      BandOutcome.Fitted fitted, double seatingsTo, double confidence) {
    OptionalDouble old =
        fitted
            .prediction()
            .window()
            .map(WindowRule::seatingVariance)
            .orElse(fitted.scatter().seatVarianceFrom());
    OptionalDouble now = fitted.scatter().seatVarianceTo();
    if (old.isEmpty() || now.isEmpty()) {
      return Optional.empty();
    }
    double from = old.getAsDouble();
    double to = now.getAsDouble();
    BandOutcome.Errors errors = fitted.prediction().errors();
    double t = StudentT.twoSided(confidence, errors.degreesOfFreedom());
    double seated = from / fitted.scatter().seatingsFrom() + to / seatingsTo;
    return Optional.of(new AtBand(t * t, Math.max(0, errors.varianceDb2() - seated), from + to));
  }
}
