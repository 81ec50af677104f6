package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.regression.StudentT;

/**
 * A claim against another one: whether a curve is so much likelier under the other that none of the
 * claimed units would be.
 *
 * <p>{@code l = log L_claimed - log L_other}. Its limit comes from the study's own units, each left
 * out of its own: {@code min(-1, mean(l) - t_{ν, 0.99}·s·√(1+3/n))}, {@code s²} the variance of
 * {@code l} in both groups, {@code ν} its degrees of freedom; a graph's own uncertainty adds to
 * {@code s²}.
 */
final class Contest {
  private static final double LEAST = -1;

  private final KindLikelihood claimed;
  private final KindLikelihood other;
  private final double mean;
  private final double variance;
  private final double quantile;
  private final int units;

  /** What is asked for: one of two groups, and how a group's covariance is known. */
  record Rule(KindLikelihood.Shrinkage shrinkage, double level) {}

  /**
   * A contest.
   *
   * @param groups all that scatter alike, the claimed one first
   * @param other the other claim's units
   * @param paired whether these are the claimed units, seen otherwise
   */
  Contest(List<double[][]> groups, double[][] other, boolean paired, Rule rule) {
    double[][] own = groups.get(0);
    DecompositionSolver inverse =
        KindLikelihood.solver(KindLikelihood.pooled(groups, rule.shrinkage));
    this.claimed = KindLikelihood.of(own, inverse);
    this.other = KindLikelihood.of(other, inverse);
    this.units = own.length;
    double[] ratios = leftOut(groups, other, paired, rule.shrinkage);
    this.mean = StatUtils.mean(ratios);
    double squares = StatUtils.variance(ratios) * (units - 1);
    int freedom = units - 1;
    for (double[][] group : paired ? groups.subList(1, groups.size()) : single(other)) {
      double[] more =
          paired
              ? transplanted(group, own)
              : leftOut(swapped(groups, other), own, false, rule.shrinkage);
      squares += StatUtils.variance(more) * (more.length - 1);
      freedom += more.length - 1;
    }
    this.variance = squares / freedom;
    this.quantile = StudentT.oneSided(rule.level, freedom);
  }

  /** What units of another group would give, were they as far from the claimed group's mean. */
  private double[] transplanted(double[][] group, double[][] own) {
    double[] ratios = new double[group.length];
    double[] centre = KindLikelihood.mean(own);
    for (int u = 0; u < group.length; u++) {
      double[] away = group[u].clone();
      double[] mean = KindLikelihood.mean(without(group, u));
      Arrays.setAll(away, i -> away[i] - mean[i] + centre[i]);
      ratios[u] = claimed.log(away) - other.log(away);
    }
    return ratios;
  }

  private static List<double[][]> single(double[][] group) {
    List<double[][]> single = new ArrayList<>();
    single.add(group);
    return single;
  }

  private static List<double[][]> swapped(List<double[][]> groups, double[][] first) {
    List<double[][]> swapped = single(first);
    groups.stream().filter(g -> g != first).forEach(swapped::add);
    return swapped;
  }

  /** The ratio of every unit of the first group, left out of what it is held against. */
  private static double[] leftOut(
      List<double[][]> groups, double[][] other, boolean paired, KindLikelihood.Shrinkage by) {
    double[][] own = groups.get(0);
    double[] ratios = new double[own.length];
    for (int u = 0; u < own.length; u++) {
      List<double[][]> rest = new ArrayList<>(groups);
      rest.set(0, without(own, u));
      DecompositionSolver inverse = KindLikelihood.solver(KindLikelihood.pooled(rest, by));
      ratios[u] =
          KindLikelihood.of(rest.get(0), inverse).log(own[u])
              - KindLikelihood.of(paired ? without(other, u) : other, inverse).log(own[u]);
    }
    return ratios;
  }

  static double[][] without(double[][] units, int unit) {
    return IntStream.range(0, units.length)
        .filter(u -> u != unit)
        .mapToObj(u -> units[u])
        .toArray(double[][]::new);
  }

  /** How much likelier the claim is than the other one, as a natural logarithm. */
  double ratio(double[] curve) {
    return claimed.log(curve) - other.log(curve);
  }

  /**
   * Below it the claim is doubted.
   *
   * @param own covariance of what a graph holds beyond the study's units
   */
  double limit(double[][] own) {
    double[] slope = claimed.slope(other);
    double more = 0;
    for (int i = 0; i < slope.length; i++) {
      for (int j = 0; j < slope.length; j++) {
        more += slope[i] * slope[j] * own[i][j];
      }
    }
    double spread = Math.sqrt(Math.max(0, variance * (1 + 3.0 / units) + Math.max(0, more)));
    return Math.min(LEAST, mean - quantile * spread);
  }

  /** How far a curve is from the mean of the claimed and of the other units. */
  double[] rms(double[] curve) {
    return Arrays.stream(new KindLikelihood[] {claimed, other})
        .mapToDouble(k -> k.rms(curve))
        .toArray();
  }
}
