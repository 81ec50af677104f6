package org.twinrig.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What every candidate, and the plain offset, does at one band on units that did not enter: errors
 * on each unit left out alone, and the mean square of the errors on all others when one unit is
 * left out from the start.
 *
 * <p>Arrays run over all units of the kind; a unit without a difference at the band has no error
 * (NaN, in this package only), and leaving it out changes nothing.
 *
 * @param members units with a difference here
 * @param offset what the plain offset does
 * @param candidates what each candidate does; null where it is not offered
 */
@SuppressWarnings("ArrayRecordComponent") // stays in this package
record BandErrors(int members, BandErrors.Rule offset, BandErrors.Rule[] candidates) {
  /** With fewer units than this only the offset is offered. */
  static final int FEWEST_UNITS = 6;

  /** Mean squares are floored here before the logarithm, dB². */
  private static final double FLOOR = 1e-6;

  /**
   * What one rule does.
   *
   * @param errors {@code r_i}, dB
   * @param logMse {@code ln} of their mean square, dB²
   * @param logMseWithout the same over the others when unit {@code i} is left out from the start
   */
  @SuppressWarnings("ArrayRecordComponent")
  record Rule(double[] errors, double logMse, double[] logMseWithout) {}

  /**
   * Computes the errors at a band.
   *
   * @param band position in the grid, with three units or more
   * @param shapes the candidates: each shape with each of {@link WindowShape#KAPPAS}
   */
  static BandErrors of(WindowData data, int band, List<WindowShape> shapes) {
    int[] members = data.members(band);
    Rule offset = offset(data, band, members);
    int kappas = WindowShape.KAPPAS.size();
    Rule[] rules = new Rule[shapes.size() * kappas];
    for (int s = 0; s < shapes.size() && members.length >= FEWEST_UNITS; s++) {
      Optional<StackedWindow> window = StackedWindow.of(data, band, shapes.get(s));
      if (window.isPresent()) {
        WindowDeletion deletion = new WindowDeletion(window.get());
        for (int k = 0; k < kappas; k++) {
          BlockDeletion blocks = deletion.at(WindowShape.KAPPAS.get(k));
          rules[s * kappas + k] = rule(blocks, members, data.units());
        }
      }
    }
    return new BandErrors(members.length, offset, rules);
  }

  private static Rule offset(WindowData data, int band, int[] members) {
    int n = members.length;
    double[] d = new double[n];
    Arrays.setAll(d, k -> data.difference(band, members[k]));
    double[] alone = LeaveOneUnitOut.errors(d);
    double[] errors = filled(data.units(), Double.NaN);
    double[] without = filled(data.units(), logMeanSquare(alone));
    double mean = Arrays.stream(d).sum() / n;
    double squares = Arrays.stream(d).map(v -> (v - mean) * (v - mean)).sum();
    for (int k = 0; k < n; k++) {
      errors[members[k]] = alone[k];
      // Squares about the mean of the others, then the closed form of a mean of n-1.
      double left = squares - (d[k] - mean) * (d[k] - mean) * n / (n - 1);
      double widening = (n - 1.0) / (n - 2.0);
      double meanSquare = Math.max(0, left) / (n - 1) * widening * widening;
      without[members[k]] = Math.log(Math.max(FLOOR, meanSquare));
    }
    return new Rule(errors, logMeanSquare(alone), without);
  }

  private static Rule rule(BlockDeletion blocks, int[] members, int units) {
    int n = members.length;
    double[] alone = WindowDeletion.withoutOne(blocks, n);
    double[] errors = filled(units, Double.NaN);
    double[] without = filled(units, logMeanSquare(alone));
    double[] squares = squaresWithout(blocks, n);
    for (int k = 0; k < n; k++) {
      errors[members[k]] = alone[k];
      without[members[k]] = Math.log(Math.max(FLOOR, squares[k] / (n - 1)));
    }
    return new Rule(errors, logMeanSquare(alone), without);
  }

  /** For each unit, the sum over the others of their squared errors when both are left out. */
  private static double[] squaresWithout(BlockDeletion blocks, int n) {
    double[] squares = new double[n];
    double[] onPartner = new double[n];
    double[] onUnit = new double[n];
    for (int i = 0; i < n - 1; i++) {
      blocks.withoutTwo(i, i + 1, onPartner, onUnit);
      double sum = 0;
      for (int j = i + 1; j < n; j++) {
        sum += onPartner[j] * onPartner[j];
        squares[j] += onUnit[j] * onUnit[j];
      }
      squares[i] += sum;
    }
    return squares;
  }

  private static double logMeanSquare(double[] errors) {
    double sum = 0;
    for (double e : errors) {
      sum += e * e;
    }
    return Math.log(Math.max(FLOOR, sum / errors.length));
  }

  private static double[] filled(int size, double value) {
    double[] values = new double[size];
    Arrays.fill(values, value);
    return values;
  }

  /** Whether a candidate is offered here. */
  boolean offers(int candidate) {
    return candidates[candidate] != null;
  }

  /** What a candidate does here; the offset where it is not offered, or is none of them. */
  Rule rule(int candidate) {
    return candidate == candidates.length || !offers(candidate) ? offset : candidates[candidate];
  }
}
