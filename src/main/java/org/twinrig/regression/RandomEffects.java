package org.twinrig.regression;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.internal.Checks;

/**
 * The mean difference between the fixtures over units of a kind, at one band.
 *
 * <p>Model: {@code d_i = δ + γ_i + e_i}, {@code γ_i ~ N(0, τ²)}, {@code e_i ~ N(0, v_i)}, where
 * {@code d_i} is the difference of unit {@code i} in dB, {@code v_i} its known sampling variance in
 * dB² and {@code n} the number of units.
 *
 * <ul>
 *   <li>{@code τ²} maximises the restricted log-likelihood {@code -½Σ ln(τ²+v_i) - ½ ln Σ w_i - ½ Σ
 *       w_i(d_i-δ̂)²}, {@code w_i = 1/(τ²+v_i)}, over {@code τ² >= 0};
 *   <li>{@code δ̂ = Σ w_i d_i / Σ w_i};
 *   <li>{@code SE² = Σ w_i (d_i-δ̂)² / ((n-1) Σ w_i)}, not truncated;
 *   <li>interval {@code δ̂ ± t_{n-1} SE}.
 * </ul>
 *
 * <p>With equal {@code v_i} this is the paired t interval. With all {@code v_i = 0} the scatter is
 * all between units. When the differences are all the same the standard error is 0.
 *
 * <p>Sources: Viechtbauer 2005, J. Educ. Behav. Stat. 30:261 (REML); Hartung 1999, Biom. J. 41:901;
 * Sidik and Jonkman 2002, Stat. Med. 21:3153 (standard error and interval).
 */
public final class RandomEffects {
  /** Below this share of the differences' spread, τ² is zero for all purposes. */
  private static final double RELATIVE_FLOOR = 1e-12;

  private static final int GRID_POINTS = 80;

  private final double confidence;

  private final StudentT.Quantiles quantiles;

  /** The procedure, with intervals at a confidence strictly between 0 and 1. */
  public RandomEffects(double confidence) {
    this.confidence = Checks.fraction(confidence, "confidence");
    this.quantiles = new StudentT.Quantiles(confidence);
  }

  /**
   * The estimate at one band: {@code δ̂} and {@code SE} in dB, variance between units {@code τ²} in
   * dB², {@code n}, and the half-width {@code t_{n-1} SE} in dB of the interval at a confidence.
   */
  public record Result(
      double meanDb,
      double standardErrorDb,
      double tauSquared,
      int units,
      double confidence,
      double halfWidthDb) {
    public Result {
      Checks.finite(meanDb, "the mean transfer in dB");
      Checks.fraction(confidence, "confidence");
      if (units < 2) {
        throw new IllegalArgumentException("an estimate needs two units, but has " + units);
      }
      Checks.notNegative(standardErrorDb, "the standard error in dB");
      Checks.notNegative(tauSquared, "the variance between units in dB²");
      Checks.notNegative(halfWidthDb, "the half-width in dB");
    }

    /** Degrees of freedom of the interval: {@code n - 1}. */
    public int degreesOfFreedom() {
      return units - 1;
    }

    /** Lower end of the pointwise interval: dB. */
    public double lowDb() {
      return meanDb - halfWidthDb;
    }

    /** Upper end of the pointwise interval: dB. */
    public double highDb() {
      return meanDb + halfWidthDb;
    }
  }

  /**
   * Estimates the mean difference from one finite difference per unit, dB, and the sampling
   * variance of each, dB², 0 or more.
   *
   * @throws IllegalArgumentException with fewer than two units, unequal lengths, or numbers that
   *     are not finite
   */
  public Result fit(double[] differencesDb, double[] variances) {
    int n = differencesDb.length;
    if (n < 2 || variances.length != n) {
      throw new IllegalArgumentException(
          "needs two or more units and a variance for each: " + n + ", " + variances.length);
    }
    for (int i = 0; i < n; i++) {
      Checks.finite(differencesDb[i], "a difference in dB");
      Checks.notNegative(variances[i], "a variance in dB²");
    }
    double tauSquared = restrictedMaximum(differencesDb, variances);
    Weighted w = Weighted.of(differencesDb, variances, tauSquared);
    double standardError = Math.sqrt(w.squares / ((n - 1) * w.sum));
    double half = quantiles.at(n - 1.0) * standardError;
    return new Result(w.mean, standardError, tauSquared, n, confidence, half);
  }

  /** The τ² of 0 or more with the greatest restricted likelihood. */
  private static double restrictedMaximum(double[] d, double[] v) {
    double spread = StatUtils.variance(d);
    double meanV = StatUtils.mean(v);
    if (spread == 0) {
      return 0;
    }
    boolean equalVariances = true;
    for (double vi : v) {
      equalVariances &= vi == v[0];
    }
    if (equalVariances) {
      return Math.max(0, spread - v[0]);
    }
    // The likelihood may have more than one maximum: all changes of its slope from rise to fall are
    // looked for on a fine grid, then refined as roots of the slope.
    double top = 4 * (spread + meanV);
    while (slope(top, d, v) > 0) {
      top *= 4;
    }
    double floor = RELATIVE_FLOOR * (spread + meanV);
    double best = slope(floor, d, v) <= 0 ? 0 : floor;
    double bestLikelihood = likelihood(Math.max(best, floor), d, v);
    double left = floor;
    for (int k = 1; k <= GRID_POINTS; k++) {
      double right = floor * Math.pow(top / floor, (double) k / GRID_POINTS);
      if (slope(left, d, v) > 0 && slope(right, d, v) <= 0) {
        double root = rootOfSlope(left, right, d, v);
        double l = likelihood(root, d, v);
        if (l > bestLikelihood) {
          best = root;
          bestLikelihood = l;
        }
      }
      left = right;
    }
    return best;
  }

  private static double rootOfSlope(double left, double right, double[] d, double[] v) {
    UnivariateFunction slope = tauSquared -> slope(tauSquared, d, v);
    if (slope.value(right) == 0) {
      return right;
    }
    return new BracketingNthOrderBrentSolver(1e-14, 1e-15 * right, 5)
        .solve(500, slope, left, right);
  }

  /** Derivative of the restricted log-likelihood with respect to τ², times two. */
  private static double slope(double tauSquared, double[] d, double[] v) {
    Weighted w = Weighted.of(d, v, tauSquared);
    double squaredWeights = 0;
    double curvature = 0;
    for (int i = 0; i < d.length; i++) {
      double wi = 1 / (tauSquared + v[i]);
      squaredWeights += wi * wi;
      curvature += wi * wi * (d[i] - w.mean) * (d[i] - w.mean);
    }
    return -w.sum + squaredWeights / w.sum + curvature;
  }

  /** Restricted log-likelihood up to a constant. */
  private static double likelihood(double tauSquared, double[] d, double[] v) {
    Weighted w = Weighted.of(d, v, tauSquared);
    double logs = 0;
    for (double vi : v) {
      logs += Math.log(tauSquared + vi);
    }
    return -0.5 * logs - 0.5 * Math.log(w.sum) - 0.5 * w.squares;
  }

  /**
   * The variance {@code τ²+v_i} of each difference about the mean; its reciprocal is the weight. In
   * the limit τ² → 0, where some units carry no variance, only those count, equally: theirs is 1
   * and that of the others infinite.
   */
  public static double[] totalVariances(double[] variances, double tauSquared) {
    boolean exact = false;
    for (double v : variances) {
      exact |= tauSquared + v == 0;
    }
    double[] total = new double[variances.length];
    for (int i = 0; i < total.length; i++) {
      double sum = tauSquared + variances[i];
      total[i] = !exact ? sum : sum == 0 ? 1 : Double.POSITIVE_INFINITY;
    }
    return total;
  }

  /** Weighted sums for one τ². */
  private record Weighted(double sum, double mean, double squares) {
    static Weighted of(double[] d, double[] v, double tauSquared) {
      double[] total = totalVariances(v, tauSquared);
      double sum = 0;
      double weighted = 0;
      for (int i = 0; i < d.length; i++) {
        double w = 1 / total[i];
        sum += w;
        weighted += w * d[i];
      }
      double mean = weighted / sum;
      double squares = 0;
      for (int i = 0; i < d.length; i++) {
        squares += (d[i] - mean) * (d[i] - mean) / total[i];
      }
      return new Weighted(sum, mean, squares);
    }
  }
}
