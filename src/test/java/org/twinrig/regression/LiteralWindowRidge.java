package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Window ridges and their weighted mean, word by word: every unit is left out by fitting again
 * without it. Slow on purpose; shares no code with what it checks.
 */
final class LiteralWindowRidge {
  static final double[] KAPPAS = {0.01, 0.03, 0.1, 0.3, 1, 3};

  /** {@code [unit][band]}, NaN where missing. */
  private final double[][] x;

  private final double[][] d;
  private final int bands;
  private final int units;
  private final List<List<Integer>> members = new ArrayList<>();
  private final boolean[] nothing;

  /** Neighbouring bands ask for the same refits. */
  private final Map<Asked, double[]> found = new HashMap<>();

  private record Asked(int band, Rule rule, int without) {}

  LiteralWindowRidge(double[][] x, double[][] d) {
    this.x = x;
    this.d = d;
    this.units = x.length;
    this.bands = x[0].length;
    this.nothing = new boolean[bands];
    for (int b = 0; b < bands; b++) {
      int band = b;
      members.add(membersOf(b));
      nothing[b] = Arrays.stream(x).allMatch(unit -> Double.isNaN(unit[band]));
    }
  }

  /** Window half-width and borrowing in bands, penalty; the plain offset when kappa is infinite. */
  record Rule(int h, int pooled, double kappa) {
    static final Rule OFFSET = new Rule(0, 0, Double.POSITIVE_INFINITY);
  }

  /** All rules at 12 bands per octave. */
  static List<Rule> rules() {
    List<Rule> rules = new ArrayList<>();
    for (int h : new int[] {0, 1, 2, 4, 6}) {
      for (int pooled : new int[] {0, 1, 2}) {
        for (double kappa : KAPPAS) {
          rules.add(new Rule(h, pooled, kappa));
        }
      }
    }
    return rules;
  }

  List<Integer> members(int b) {
    return members.get(b);
  }

  private List<Integer> membersOf(int b) {
    List<Integer> members = new ArrayList<>();
    for (int i = 0; i < units; i++) {
      if (!Double.isNaN(d[i][b])) {
        members.add(i);
      }
    }
    return List.copyOf(members);
  }

  double mean(int b) {
    return members(b).stream().mapToDouble(i -> d[i][b]).average().orElseThrow();
  }

  boolean nothing(int band) {
    return nothing[band];
  }

  boolean complete(int b, Rule rule) {
    for (int j = b - rule.pooled; j <= b + rule.pooled; j++) {
      if (j < 0 || j >= bands || (j != b && members(j).isEmpty())) {
        continue;
      }
      for (int i : members(b)) {
        if (Double.isNaN(d[i][j])) {
          return false;
        }
        for (int c = j - rule.h; c <= j + rule.h; c++) {
          if (c >= 0 && c < bands && !nothing(c) && Double.isNaN(x[i][c])) {
            return false;
          }
        }
      }
    }
    return true;
  }

  /** The penalty of a rule at a band: from all units, whoever is left out. */
  double lambda(int b, Rule rule) {
    Fit all = new Fit(b, rule, members(b), 0);
    double squares = 0;
    for (double[] row : all.rows) {
      for (double element : row) {
        squares += element * element;
      }
    }
    return rule.kappa * squares / (2 * rule.h + 1);
  }

  /** The error on a unit at a band of a rule fitted on some units. */
  double error(int b, Rule rule, List<Integer> fitted, int unit, double lambda) {
    if (Double.isInfinite(rule.kappa)) {
      return d[unit][b] - fitted.stream().mapToDouble(i -> d[i][b]).average().orElseThrow();
    }
    return d[unit][b] - new Fit(b, rule, fitted, lambda).predict(unit);
  }

  /** A ridge fitted by its normal equations. */
  final class Fit {
    private final int b;
    private final Rule rule;
    private final List<double[]> rows = new ArrayList<>();
    private final List<Double> responses = new ArrayList<>();
    private double meanDifference;
    private double[] meanWindow;
    double[] beta;

    Fit(int b, Rule rule, List<Integer> fitted, double lambda) {
      this.b = b;
      this.rule = rule;
      for (int j = b - rule.pooled; j <= b + rule.pooled; j++) {
        if (j >= 0 && j < bands && (j == b || !members(j).isEmpty())) {
          stack(j, fitted);
        }
      }
      if (lambda > 0) {
        int p = 2 * rule.h + 1;
        double[][] normal = new double[p][p];
        double[] right = new double[p];
        for (int r = 0; r < rows.size(); r++) {
          double[] row = rows.get(r);
          double response = responses.get(r);
          for (int k = 0; k < p; k++) {
            right[k] += row[k] * response;
            for (int l = 0; l < p; l++) {
              normal[k][l] += row[k] * row[l];
            }
          }
        }
        for (int k = 0; k < p; k++) {
          normal[k][k] += lambda;
        }
        RealMatrix matrix = new Array2DRowRealMatrix(normal, false);
        beta =
            new CholeskyDecomposition(matrix, 1e-10, 1e-300)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
      }
    }

    private void stack(int j, List<Integer> fitted) {
      int p = 2 * rule.h + 1;
      double[] means = new double[p];
      for (int k = 0; k < p; k++) {
        for (int i : fitted) {
          means[k] += level(i, j + k - rule.h) / fitted.size();
        }
      }
      int at = j;
      double mean = fitted.stream().mapToDouble(i -> d[i][at]).average().orElseThrow();
      for (int i : fitted) {
        double[] row = new double[p];
        for (int k = 0; k < p; k++) {
          row[k] = level(i, j + k - rule.h) - means[k];
        }
        rows.add(row);
        responses.add(d[i][j] - mean);
      }
      if (j == b) {
        meanDifference = mean;
        meanWindow = means;
      }
    }

    double predict(int unit) {
      double sum = meanDifference;
      for (int k = 0; k < beta.length; k++) {
        sum += beta[k] * (level(unit, b + k - rule.h) - meanWindow[k]);
      }
      return sum;
    }

    private double level(int unit, int band) {
      return band < 0 || band >= bands || nothing(band) ? 0 : x[unit][band];
    }
  }

  /** Leave-one-unit-out errors over some units, indexed by unit; NaN for the others. */
  double[] errors(int b, Rule rule, List<Integer> among) {
    double[] errors = new double[units];
    Arrays.fill(errors, Double.NaN);
    double lambda = Double.isInfinite(rule.kappa) ? 0 : lambda(b, rule);
    for (int i : among) {
      List<Integer> others = new ArrayList<>(among);
      others.remove(Integer.valueOf(i));
      errors[i] = error(b, rule, others, i, lambda);
    }
    return errors;
  }

  /**
   * Weights of all rules at a band, the offset's first, found on the units other than {@code
   * without}.
   */
  double[] weights(int b, int without, List<Rule> rules) {
    double[] weights = new double[rules.size() + 1];
    double n = left(b, without).size();
    List<Rule> offered =
        rules.stream().filter(r -> members(b).size() >= 6 && complete(b, r)).toList();
    weights[0] = 0.7 * Math.exp(-n / 2 * score(b, Rule.OFFSET, without));
    double sum = weights[0];
    for (Rule rule : offered) {
      double weight = 0.3 / offered.size() * Math.exp(-n / 2 * score(b, rule, without));
      weights[1 + rules.indexOf(rule)] = weight;
      sum += weight;
    }
    double kept = 0;
    for (int c = 0; c < weights.length; c++) {
      weights[c] = c > 0 && weights[c] < 1e-9 * sum ? 0 : weights[c];
      kept += weights[c];
    }
    for (int c = 0; c < weights.length; c++) {
      weights[c] /= kept;
    }
    return weights;
  }

  private List<Integer> left(int b, int without) {
    List<Integer> left = new ArrayList<>(members(b));
    left.remove(Integer.valueOf(without));
    return left;
  }

  private List<Integer> around(int b) {
    List<Integer> around = new ArrayList<>();
    for (int k = Math.max(0, b - 2); k <= Math.min(bands - 1, b + 2); k++) {
      if (members(k).size() >= 3) {
        around.add(k);
      }
    }
    return around;
  }

  private double[] errorsOrOffset(int k, Rule rule, int without) {
    return found.computeIfAbsent(
        new Asked(k, rule, without),
        asked -> {
          List<Integer> left = left(k, without);
          boolean offered = members(k).size() >= 6 && complete(k, rule);
          return errors(k, offered ? rule : Rule.OFFSET, left);
        });
  }

  private double score(int b, Rule rule, int without) {
    double sum = 0;
    for (int k : around(b)) {
      double squares = 0;
      double[] errors = errorsOrOffset(k, rule, without);
      for (int i : left(k, without)) {
        squares += errors[i] * errors[i];
      }
      sum += Math.log(Math.max(1e-6, squares / left(k, without).size()));
    }
    return sum / around(b).size();
  }
}
