package org.twinrig.screening;

import java.util.Arrays;
import org.twinrig.internal.Checks;

/**
 * Limits of a Shewhart chart of single values: {@code centre ± 3σ}.
 *
 * <p>{@code σ} comes from the moving range, the distance between one value and the next, so that a
 * slow trend does not widen the limits that are to show it.
 *
 * @param centreDb centre line, dB
 * @param sigmaDb {@code σ}, dB, 0 or more
 */
public record ControlLimits(double centreDb, double sigmaDb) {
  /** Mean range of two normal values over σ, {@code 2/√π}, as the handbook prints it. */
  private static final double MEAN_RANGE = 1.128;

  /** Median range of two normal values over σ, {@code √2·Φ⁻¹(0.75)}. */
  private static final double MEDIAN_RANGE = 0.9538725524;

  private static final double SIGMAS = 3;

  /**
   * Scatter of a level that is read to 0.01 dB, {@code 0.01/√12}: nothing is steadier than that.
   */
  private static final double LEAST_SIGMA_DB = 0.01 / Math.sqrt(12);

  public ControlLimits {
    Checks.finite(centreDb, "a centre line");
    Checks.notNegative(sigmaDb, "a standard deviation");
  }

  /**
   * The textbook's limits: {@code mean ± 3·MR/1.128} with the mean moving range {@code MR}
   * (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2). They suit values that are known to
   * be in control: one odd value makes two great ranges, and among fewer than eight values it can
   * never lie outside limits that it widened itself.
   *
   * @param valuesDb 2 or more, in the order of time
   */
  static ControlLimits byMeanRange(double[] valuesDb) {
    return new ControlLimits(
        Arrays.stream(valuesDb).average().orElseThrow(),
        Arrays.stream(movingRanges(valuesDb)).average().orElseThrow() / MEAN_RANGE);
  }

  /**
   * The same from the medians: {@code median ± 3·MMR/0.954} with the median moving range {@code
   * MMR}. One odd value moves neither much. This is for values of which some may be out of control;
   * in simulation 2 % of the values of a steady process lie outside with 6 to 12 values, where the
   * textbook's limits exceed 0.3 %, and an odd value 6σ away among nine is found in 77 % of the
   * cases instead of 16 %. Common practice; the factor follows from the normal distribution.
   *
   * @param valuesDb 2 or more, in the order of time
   */
  static ControlLimits byMedianRange(double[] valuesDb) {
    return new ControlLimits(
        Scatter.median(valuesDb),
        Math.max(LEAST_SIGMA_DB, Scatter.median(movingRanges(valuesDb)) / MEDIAN_RANGE));
  }

  /** Half-width of the limits: {@code 3σ}, dB. */
  public double halfWidthDb() {
    return SIGMAS * sigmaDb;
  }

  /** Whether a value lies outside. */
  boolean exceededBy(double valueDb) {
    return Math.abs(valueDb - centreDb) > halfWidthDb();
  }

  /** Lower limit: dB. */
  public double lowerDb() {
    return centreDb - halfWidthDb();
  }

  /** Upper limit: dB. */
  public double upperDb() {
    return centreDb + halfWidthDb();
  }

  private static double[] movingRanges(double[] values) {
    double[] ranges = new double[values.length - 1];
    Arrays.setAll(ranges, i -> Math.abs(values[i + 1] - values[i]));
    return ranges;
  }
}
