package org.twinrig.regression;

import org.apache.commons.math3.distribution.TDistribution;

/** Quantiles of Student's t distribution. */
public final class StudentT {
  private StudentT() {}

  /**
   * The factor of a two-sided interval.
   *
   * @param confidence of the interval, strictly between 0 and 1
   * @param degreesOfFreedom above 0; not whole where they are approximate
   * @return {@code t} with {@code P(|T| <= t) = confidence}
   */
  public static double twoSided(double confidence, double degreesOfFreedom) {
    // The generator is left out: nothing is drawn.
    return new TDistribution(null, degreesOfFreedom)
        .inverseCumulativeProbability((1 + confidence) / 2);
  }

  /**
   * The factor of a one-sided interval.
   *
   * @param confidence of the interval, strictly between 0 and 1
   * @param degreesOfFreedom above 0; not whole where they are approximate
   * @return {@code t} with {@code P(T <= t) = confidence}
   */
  public static double oneSided(double confidence, double degreesOfFreedom) {
    return new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(confidence);
  }

  /**
   * How often chance alone goes as high.
   *
   * @param t any number, also infinite
   * @param degreesOfFreedom above 0; not whole where they are approximate
   * @return {@code P(T >= t)}
   */
  public static double upperTail(double t, double degreesOfFreedom) {
    // Of the negative, so that a small share keeps its digits.
    return Double.isInfinite(t)
        ? (t > 0 ? 0 : 1)
        : new TDistribution(null, degreesOfFreedom).cumulativeProbability(-t);
  }
}
