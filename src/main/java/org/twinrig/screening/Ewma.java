package org.twinrig.screening;

/**
 * Exponentially weighted moving average, which finds small lasting shifts that single values hide.
 *
 * <p>{@code z_i = λ·x_i + (1-λ)·z_{i-1}} from {@code z_0} the centre line, with limits {@code ± 3σ
 * · √( λ/(2-λ) · (1-(1-λ)^(2i)) )}, {@code i} from 1. Source: NIST/SEMATECH e-Handbook of
 * Statistical Methods, 6.3.2.4. A value outside the limits of single values is passed over, {@code
 * z_i = z_{i-1}}, as the average would go on to accuse the sessions after it. The limits for a
 * starting chart instead of their end value: Montgomery, Introduction to Statistical Quality
 * Control (from memory).
 */
final class Ewma {
  /** The handbook's choice for a mix of large and small shifts. */
  static final double LAMBDA = 0.3;

  private Ewma() {}

  static double[] of(double[] values, ControlLimits limits) {
    double[] averages = new double[values.length];
    double before = limits.centreDb();
    for (int i = 0; i < values.length; i++) {
      if (!limits.exceededBy(values[i])) {
        before = LAMBDA * values[i] + (1 - LAMBDA) * before;
      }
      averages[i] = before;
    }
    return averages;
  }

  /**
   * Half-width of the limits at one value.
   *
   * @param number of the value, from 1
   * @param limits of the single values
   */
  static double halfWidthDb(int number, ControlLimits limits) {
    double settled = LAMBDA / (2 - LAMBDA);
    return limits.halfWidthDb() * Math.sqrt(settled * (1 - Math.pow(1 - LAMBDA, 2.0 * number)));
  }
}
