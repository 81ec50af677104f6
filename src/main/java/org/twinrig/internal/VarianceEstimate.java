package org.twinrig.internal;

import java.util.List;

/**
 * A variance that was estimated, 0 or more, with its degrees of freedom, above 0; infinite where
 * the variance is held to be exact.
 */
public record VarianceEstimate(double variance, double degreesOfFreedom) {
  public VarianceEstimate {
    Checks.notNegative(variance, "a variance");
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above 0, but are " + degreesOfFreedom);
    }
  }

  /**
   * The effective degrees of freedom of a sum of independent estimates, {@code ν = 1 / Σ
   * (s_i²/Σs²)²/ν_i} (Welch–Satterthwaite, JCGM 100:2008, G.4.1): between the least of all and
   * their sum; infinite when all that count are.
   *
   * @throws IllegalArgumentException when no variance is above 0
   */
  public static double freedom(List<VarianceEstimate> summands) {
    double total = 0;
    for (VarianceEstimate e : summands) {
      total += e.variance;
    }
    Checks.positive(total, "a sum of variances");
    double sum = 0;
    for (VarianceEstimate e : summands) {
      // Shares instead of fourth powers: neither overflows nor vanishes.
      double share = e.variance / total;
      sum += share * share / e.degreesOfFreedom;
    }
    return 1 / sum;
  }
}
