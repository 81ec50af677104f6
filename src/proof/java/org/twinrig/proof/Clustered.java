package org.twinrig.proof;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A figure made from many independent studies, with the share each of them has in its error.
 *
 * <p>Study {@code s} moves a figure {@code θ} by its linearised deviation {@code z_s}; these add up
 * to 0, and the Monte Carlo standard error is {@code √( Σ z_s² / (S(S-1)) )}. For a ratio of sums
 * {@code R = Σ y_s / Σ x_s}, {@code z_s = S·(y_s - R·x_s) / Σ x_s}; functions of figures follow by
 * the delta method. For figures that depend on each other because they come from the same studies
 * this is right, as their deviations are carried study by study.
 *
 * <p>Source: W. G. Cochran, Sampling Techniques, 3rd ed. (1977), section 6.3 for the ratio; from
 * memory.
 */
final class Clustered {
  private final double value;
  private final double[] deviations;

  private Clustered(double value, double[] deviations) {
    this.value = value;
    this.deviations = deviations;
  }

  /**
   * A ratio of sums over studies.
   *
   * @param numerators one per study
   * @param denominators one per study; their sum is above 0
   */
  static Clustered ratio(double[] numerators, double[] denominators) {
    double total = Arrays.stream(denominators).sum();
    if (!(total > 0)) {
      throw new IllegalArgumentException("a ratio needs something to divide by");
    }
    int studies = numerators.length;
    double ratio = Arrays.stream(numerators).sum() / total;
    double[] z = new double[studies];
    Arrays.setAll(z, s -> studies * (numerators[s] - ratio * denominators[s]) / total);
    return new Clustered(ratio, z);
  }

  /** The square root; of 0 it is 0 without error, as then every study gave 0. */
  Clustered squareRoot() {
    double root = Math.sqrt(value);
    return new Clustered(root, scaled(root == 0 ? 0 : 0.5 / root));
  }

  /** This divided by another figure of the same studies. */
  Clustered over(Clustered other) {
    double quotient = value / other.value;
    double[] z = new double[deviations.length];
    Arrays.setAll(z, s -> (deviations[s] - quotient * other.deviations[s]) / other.value);
    return new Clustered(quotient, z);
  }

  /** The mean of a value over all items of all studies; there is one item or more. */
  static <T> Clustered mean(List<List<T>> studies, ToDoubleFunction<T> value) {
    return ratio(
        studies.stream().mapToDouble(s -> s.stream().mapToDouble(value).sum()).toArray(),
        studies.stream().mapToDouble(List::size).toArray());
  }

  /** The plain mean of figures of the same studies. */
  static Clustered average(List<Clustered> figures) {
    double[] z = new double[figures.get(0).deviations.length];
    double sum = 0;
    for (Clustered figure : figures) {
      sum += figure.value;
      for (int s = 0; s < z.length; s++) {
        z[s] += figure.deviations[s] / figures.size();
      }
    }
    return new Clustered(sum / figures.size(), z);
  }

  double value() {
    return value;
  }

  /** Monte Carlo standard error, taken between studies. */
  double se() {
    double studies = deviations.length;
    double squares = Arrays.stream(deviations).map(z -> z * z).sum();
    return Math.sqrt(squares / (studies * (studies - 1)));
  }

  private double[] scaled(double by) {
    return Arrays.stream(deviations).map(z -> z * by).toArray();
  }
}
