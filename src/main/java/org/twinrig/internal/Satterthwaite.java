package org.twinrig.internal;

/**
 * Effective degrees of freedom of a sum of estimated variances, {@code ν = 1 / Σ (s_i²/Σs²)²/ν_i}
 * (Welch–Satterthwaite, JCGM 100:2008, G.4.1).
 */
public final class Satterthwaite {
  private Satterthwaite() {}

  /**
   * The effective degrees of freedom, between the least of all and their sum; infinite when all
   * that count are.
   *
   * @param variances the summands, 0 or more, of which one is above 0
   * @param degreesOfFreedom of each; may be infinite
   */
  public static double freedom(double[] variances, double[] degreesOfFreedom) {
    double total = 0;
    for (double variance : variances) {
      total += variance;
    }
    Checks.positive(total, "a sum of variances");
    double sum = 0;
    for (int k = 0; k < variances.length; k++) {
      // Shares instead of fourth powers: neither overflows nor vanishes.
      double share = variances[k] / total;
      sum += share * share / degreesOfFreedom[k];
    }
    return 1 / sum;
  }
}
