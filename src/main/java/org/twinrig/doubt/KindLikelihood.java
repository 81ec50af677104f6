package org.twinrig.doubt;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;

/**
 * How likely a curve is as one more of some units.
 *
 * <p>Linear discriminant analysis (Fisher 1936) with heavier tails: units scatter about their
 * group's mean {@code x̄} with one covariance {@code Σ} for all groups, their pooled sample
 * covariance, shrunk to its diagonal, whose variances are averaged over neighbours; {@code log L =
 * -(ν+p)/2 · log(1 + d²/ν)}, {@code d² = (x-x̄)ᵀ Σ⁻¹ (x-x̄)/(1+1/n)}, Student's t in {@code p}
 * dimensions with {@code ν = 20} (our choice; it grows slower than a Gaussian's where no group
 * fits). Constants common to all groups are left out.
 */
final class KindLikelihood {
  private static final double FREEDOM = 20;

  private final double[] mean;
  private final double scale;
  private final DecompositionSolver inverse;

  private KindLikelihood(double[] mean, int units, DecompositionSolver inverse) {
    this.mean = mean;
    this.scale = 1 + 1.0 / units;
    this.inverse = inverse;
  }

  /**
   * How much is known of the units' covariance, and how it is shrunk.
   *
   * @param share of the diagonal
   * @param reach to so many neighbours variances are averaged
   * @param least standard deviation that is left where units do not differ
   */
  record Shrinkage(double share, int reach, double least) {}

  /** The pooled covariance of groups, each of units of equal length. */
  static double[][] pooled(List<double[][]> groups, Shrinkage shrinkage) {
    int size = groups.get(0)[0].length;
    double[][] sum = new double[size][size];
    int freedom = 0;
    for (double[][] group : groups) {
      double[] mean = mean(group);
      for (double[] unit : group) {
        for (int i = 0; i < size; i++) {
          for (int j = 0; j <= i; j++) {
            sum[i][j] += (unit[i] - mean[i]) * (unit[j] - mean[j]);
          }
        }
      }
      freedom += group.length - 1;
    }
    double[] variances = new double[size];
    for (int i = 0; i < size; i++) {
      int from = Math.max(0, i - shrinkage.reach);
      int to = Math.min(size - 1, i + shrinkage.reach);
      for (int k = from; k <= to; k++) {
        variances[i] += sum[k][k] / freedom / (to - from + 1);
      }
    }
    double least = shrinkage.least * shrinkage.least;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        sum[i][j] *= (1 - shrinkage.share) / freedom;
        sum[j][i] = sum[i][j];
      }
      sum[i][i] += shrinkage.share * variances[i] + least;
    }
    return sum;
  }

  static DecompositionSolver solver(double[][] covariance) {
    return new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false)).getSolver();
  }

  static KindLikelihood of(double[][] units, DecompositionSolver inverse) {
    return new KindLikelihood(mean(units), units.length, inverse);
  }

  static double[] mean(double[][] units) {
    double[] mean = new double[units[0].length];
    for (double[] unit : units) {
      Arrays.setAll(mean, i -> mean[i] + unit[i] / units.length);
    }
    return mean;
  }

  /** {@code d²}. */
  double distance(double[] curve) {
    ArrayRealVector away = new ArrayRealVector(KindCurves.minus(curve, mean), false);
    return away.dotProduct(inverse.solve(away)) / scale;
  }

  /** {@code log L} but for a constant. */
  double log(double[] curve) {
    return -0.5 * (FREEDOM + mean.length) * Math.log1p(distance(curve) / FREEDOM);
  }

  /** How {@code log L} less that of another group changes with a curve, at the mean of this one. */
  double[] slope(KindLikelihood other) {
    double tail = (FREEDOM + mean.length) / (FREEDOM + other.distance(mean)) / other.scale;
    return inverse
        .solve(new ArrayRealVector(KindCurves.minus(mean, other.mean), false))
        .mapMultiply(tail)
        .toArray();
  }

  /** Root mean square of what a curve differs by from the mean. */
  double rms(double[] curve) {
    return Math.sqrt(
        Arrays.stream(KindCurves.minus(curve, mean)).map(d -> d * d).average().orElseThrow());
  }
}
