package org.twinrig.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.internal.linalg.ThinSvd;

/**
 * Digits reached on the linear regressions of NIST's Statistical Reference Datasets, with the
 * decomposition that carries the window ridge and no penalty. Each bound is the level reached, less
 * about half a digit.
 */
class StrdTest {
  /** Certified coefficients as in the heads of the tables, intercept first. */
  private static final double[] NORRIS = {-0.262323073774029, 1.00211681802045};

  private static final double[] PONTIUS = {
    0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14
  };
  private static final double[] LONGLEY = {
    -3482258.63459582,
    15.0618722713733,
    -0.358191792925910E-01,
    -2.02022980381683,
    -1.03322686717359,
    -0.511041056535807E-01,
    1829.15146461355
  };
  private static final double[] ONES = {1, 1, 1, 1, 1, 1};
  private static final double[] TENTHS = {1, 0.1, 0.01, 0.001, 0.0001, 0.00001};

  @Test
  void leastSquaresOnALine() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_norris.csv");
    double[][] x = {ReferenceTable.column(rows, "x")};
    StrdDigits.reach(11.5, "Norris", NORRIS, withIntercept(x, ReferenceTable.column(rows, "y")));
  }

  @Test
  void leastSquaresOnAParabola() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_pontius.csv");
    double[][] x = powers(ReferenceTable.column(rows, "x"), 2);
    StrdDigits.reach(12, "Pontius", PONTIUS, withIntercept(x, ReferenceTable.column(rows, "y")));
  }

  @Test
  void leastSquaresOnSixPredictorsThatNearlyDependOnEachOther() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_longley.csv");
    double[][] x = new double[6][];
    Arrays.setAll(x, k -> ReferenceTable.column(rows, "x" + (k + 1)));
    StrdDigits.reach(12, "Longley", LONGLEY, withIntercept(x, ReferenceTable.column(rows, "y")));
  }

  /**
   * The centred columns have a condition of 4·10⁶, so no direction is near what counts as
   * negligible (10⁻¹⁵). With such a condition the square of it times the residual limits set 5,
   * whose noise is 10⁴ times that of set 3.
   */
  @ParameterizedTest
  @CsvSource({"1, 8.5", "2, 10.5", "3, 8", "4, 8", "5, 7"})
  void leastSquaresOnAPolynomialOfTheFifthDegree(int set, double digits) {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_wampler.csv");
    double[][] x = powers(ReferenceTable.column(rows, "x"), 5);
    double[] y = ReferenceTable.column(rows, "y" + set);
    StrdDigits.reach(digits, "Wampler" + set, set == 2 ? TENTHS : ONES, withIntercept(x, y));
  }

  @Test
  void leastSquaresThroughTheOrigin() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_noint1.csv");
    double[] x = ReferenceTable.column(rows, "x");
    double[] slope = ThinSvd.of(x, x.length, 1).ridge(ReferenceTable.column(rows, "y"), 0);
    StrdDigits.reach(14, "NoInt1", new double[] {2.07438016528926}, slope);
  }

  /** Intercept and slopes; predictors and response centred about their means, as windows are. */
  private static double[] withIntercept(double[][] x, double[] y) {
    int n = y.length;
    double[] means = Arrays.stream(x).mapToDouble(StrdTest::mean).toArray();
    double meanY = mean(y);
    double[] rows = new double[n * x.length];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < x.length; k++) {
        rows[i * x.length + k] = x[k][i] - means[k];
      }
    }
    double[] slopes =
        ThinSvd.of(rows, n, x.length)
            .ridge(Arrays.stream(y).map(value -> value - meanY).toArray(), 0);
    double intercept = meanY;
    double[] all = new double[x.length + 1];
    for (int k = 0; k < x.length; k++) {
      intercept -= slopes[k] * means[k];
      all[k + 1] = slopes[k];
    }
    all[0] = intercept;
    return all;
  }

  private static double[][] powers(double[] x, int degree) {
    return IntStream.rangeClosed(1, degree)
        .mapToObj(power -> Arrays.stream(x).map(v -> Math.pow(v, power)).toArray())
        .toArray(double[][]::new);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
