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
}
