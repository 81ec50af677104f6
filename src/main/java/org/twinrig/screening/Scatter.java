package org.twinrig.screening;

import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/**
 * Measures of scatter that a few wild values cannot move.
 *
 * <p>Sources: Rousseeuw and Croux 1993, J. Am. Stat. Assoc. 88:1273 (pairwise differences); Tukey
 * 1977, Exploratory Data Analysis, chapter 2 (fence). Both from memory.
 */
final class Scatter {
  /** {@code 1/(√2·Φ⁻¹(5/8))}: makes the first quartile of pairwise differences a normal σ. */
  private static final double QUARTILE_TO_SIGMA = 2.2191;

  private Scatter() {}

  /**
   * A quantile: linear between order statistics, the first at 0 and the last at 1 (definition 7 of
   * Hyndman and Fan 1996). At least one value, not changed; a share from 0 to 1.
   */
  static double quantile(double[] values, double share) {
    return new Percentile(100 * share).withEstimationType(EstimationType.R_7).evaluate(values);
  }

  /** The middle value; of an even number, the mean of the two in the middle. */
  static double median(double[] values) {
    return quantile(values, 0.5);
  }

  /**
   * Standard deviation from the absolute differences of pairs: {@code σ = 2.2191·Q₁}, {@code Q₁}
   * their first quartile. It needs only a quarter of the pairs to be of good values, so it holds
   * where the median absolute deviation has long given way.
   */
  static double ofPairs(double[] pairDifferences) {
    return QUARTILE_TO_SIGMA * quantile(pairDifferences, 0.25);
  }

  /** The upper fence {@code Q₃ + k·(Q₃ - Q₁)}: it follows the scatter and the skew of the bulk. */
  static double upperFence(double[] values, double reach) {
    double upper = quantile(values, 0.75);
    return upper + reach * (upper - quantile(values, 0.25));
  }
}
