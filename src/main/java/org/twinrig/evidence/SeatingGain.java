package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;

/**
 * What more seatings would buy in one region, if every unit were seated as often on each fixture.
 *
 * <p>{@code half_m = t_{n-1}·√( (τ² + v_m)(1 + 1/n) )} with {@code v_m = (s_rA² + s_rB²)/m} is the
 * half-width of the interval in which one unit's difference falls about the mean transfer of {@code
 * n} units, {@code m} seatings on each fixture; {@code τ²} the variance between units. That of the
 * seatings alone is {@code t_{n-1}·√( v_m (1 + 1/n) )}; squares add up, half-widths do not. Over a
 * region, half-widths are root mean squares over its bands. This is the plain mean's interval;
 * where the window model predicts, the study's own is narrower.
 *
 * @param region the region
 * @param steps for 1 to {@link #MOST_SEATINGS} seatings
 * @param endlessHalfDb half-width that no number of seatings gets below, dB
 */
public record SeatingGain(Region region, List<Step> steps, double endlessHalfDb) {

  /** More seatings are not looked at. */
  public static final int MOST_SEATINGS = 10;

  /** Copies the list. */
  public SeatingGain {
    steps = List.copyOf(steps);
  }

  /**
   * One number of seatings.
   *
   * @param seatings {@code m}, on each fixture
   * @param seatingHalfDb half-width from the seatings alone, dB
   * @param halfDb half-width from units and seatings, dB
   * @param share of seating in the variance, 0 to 1; nothing when there is no variance
   */
  public record Step(int seatings, double seatingHalfDb, double halfDb, OptionalDouble share) {}

  /** One band: {@code t²(1 + 1/n)}, {@code τ²} and {@code v_1}. */
  private record Variances(double factor, double units, double seating) {
    double halfSquared(double variance) {
      return factor * variance;
    }
  }

  /**
   * What seatings buy a kind.
   *
   * @param repeatability of its seatings
   * @param estimate of its transfer
   * @param confidence of the half-widths
   * @return in the order of {@link Region}; a region in which no band has both an estimate and
   *     repeated seatings on each fixture is left out
   */
  public static List<SeatingGain> of(
      Repeatability repeatability, KindEstimate estimate, double confidence) {
    List<SeatingGain> gains = new ArrayList<>();
    for (Region region : Region.values()) {
      List<Variances> bands = new ArrayList<>();
      for (Repeatability.AtBand at : repeatability.from()) {
        OptionalDouble seating = repeatability.seatingVariance(at.index());
        if (region.holds(at.band())
            && seating.isPresent()
            && estimate.bands().get(at.index()) instanceof BandOutcome.Fitted fitted) {
          bands.add(variances(fitted, seating.getAsDouble(), confidence));
        }
      }
      if (!bands.isEmpty()) {
        gains.add(of(region, bands));
      }
    }
    return gains;
  }

  private static Variances variances(BandOutcome.Fitted fitted, double seating, double confidence) {
    int freedom = fitted.mean().degreesOfFreedom();
    double t = StudentT.twoSided(confidence, freedom);
    return new Variances(t * t * (1 + 1.0 / (freedom + 1)), fitted.mean().tauSquared(), seating);
  }

  private static SeatingGain of(Region region, List<Variances> bands) {
    List<Step> steps = new ArrayList<>();
    double endless =
        bands.stream().mapToDouble(v -> v.halfSquared(v.units)).average().orElseThrow();
    double units = bands.stream().mapToDouble(Variances::units).sum();
    double once = bands.stream().mapToDouble(Variances::seating).sum();
    for (int m = 1; m <= MOST_SEATINGS; m++) {
      int seatings = m;
      double alone =
          bands.stream()
              .mapToDouble(v -> v.halfSquared(v.seating / seatings))
              .average()
              .orElseThrow();
      double all = units + once / m;
      steps.add(
          new Step(
              m,
              Math.sqrt(alone),
              Math.sqrt(endless + alone),
              all > 0 ? OptionalDouble.of(once / m / all) : OptionalDouble.empty()));
    }
    return new SeatingGain(region, steps, Math.sqrt(endless));
  }
}
