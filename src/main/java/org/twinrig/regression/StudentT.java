package org.twinrig.regression;

import org.apache.commons.math3.distribution.TDistribution;

/** Quantiles of Student's t distribution. */
public final class StudentT {
  private StudentT() {}

  /**
   * The factor of a two-sided interval.
   *
   * @param confidence of the interval, strictly between 0 and 1
   * @param degreesOfFreedom 1 or more
   * @return {@code t} with {@code P(|T| <= t) = confidence}
   */
  public static double twoSided(double confidence, int degreesOfFreedom) {
    // The generator is left out: nothing is drawn.
    return new TDistribution(null, degreesOfFreedom)
        .inverseCumulativeProbability((1 + confidence) / 2);
  }

  /**
   * The factor of a one-sided interval.
   *
   * @param confidence of the interval, strictly between 0 and 1
   * @param degreesOfFreedom 1 or more
   * @return {@code t} with {@code P(T <= t) = confidence}
   */
  public static double oneSided(double confidence, int degreesOfFreedom) {
    return new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(confidence);
  }

  /**
   * How often chance alone goes as high.
   *
   * @param t any number, also infinite
   * @param degreesOfFreedom 1 or more
   * @return {@code P(T >= t)}
   */
  public static double upperTail(double t, int degreesOfFreedom) {
    // Of the negative, so that a small share keeps its digits.
    return Double.isInfinite(t)
        ? (t > 0 ? 0 : 1)
        : new TDistribution(null, degreesOfFreedom).cumulativeProbability(-t);
  }
}
