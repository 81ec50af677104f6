package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.internal.linalg.ThinSvd;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.BandSample;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Digits reached on the Statistical Reference Datasets of NIST: least squares with the
 * decomposition that carries the window ridge, and one-way analysis of variance with what pairs
 * seatings and estimates the variance between units.
 *
 * <p>Digits are the log relative error {@code -lg(|q - c|/|c|)} of the worst value, 15 at most (the
 * certified values have 15 digits). Each bound is the level reached, less about half a digit.
 */
class StrdTest {
  private static final BandGrid ONE_BAND =
      new BandGrid(BandGrid.covering(1000, 2000, 1).bands().subList(0, 1));

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
    reaches(11.5, "Norris", NORRIS, withIntercept(x, ReferenceTable.column(rows, "y")));
  }

  @Test
  void leastSquaresOnAParabola() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_pontius.csv");
    double[][] x = powers(ReferenceTable.column(rows, "x"), 2);
    reaches(12, "Pontius", PONTIUS, withIntercept(x, ReferenceTable.column(rows, "y")));
  }

  @Test
  void leastSquaresOnSixPredictorsThatNearlyDependOnEachOther() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_longley.csv");
    double[][] x = new double[6][];
    Arrays.setAll(x, k -> ReferenceTable.column(rows, "x" + (k + 1)));
    reaches(12, "Longley", LONGLEY, withIntercept(x, ReferenceTable.column(rows, "y")));
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
    reaches(digits, "Wampler" + set, set == 2 ? TENTHS : ONES, withIntercept(x, y));
  }

  @Test
  void leastSquaresThroughTheOrigin() {
    List<Map<String, String>> rows = ReferenceTable.rows("nist_noint1.csv");
    double[] x = ReferenceTable.column(rows, "x");
    double[] slope = ThinSvd.of(x, x.length, 1).ridge(ReferenceTable.column(rows, "y"), 0);
    reaches(14, "NoInt1", new double[] {2.07438016528926}, slope);
  }

  /**
   * Two things limit sets 4 to 9, whose values share 7 and 13 leading digits. Written as doubles
   * they keep 10 and 4 digits of the variances, whatever is computed then (found in exact
   * rationals). The rest goes in {@link Pairing}'s mean, one running sum: 2001 values near 10¹² add
   * up to 2·10¹⁵, where doubles lie 0.25 apart, so that a mean is off by 0.02 where cells differ by
   * 0.1. Nothing of F is left in set 9 but its size. Levels in dB share three leading digits at
   * most, so one sum is enough for them.
   */
  @ParameterizedTest
  @CsvSource({
    "SmLs01, 13.5",
    "SmLs02, 13.5",
    "SmLs03, 12",
    "SmLs04, 8",
    "SmLs05, 7.5",
    "SmLs06, 6",
    "SmLs07, 2.3",
    "SmLs08, 1.9",
    "SmLs09, 0.3"
  })
  void analysisOfVarianceByPairingAndRandomEffects(String set, double digits) {
    Map<String, String> certified =
        ReferenceTable.rows("nist_anova_smls_rules.csv").stream()
            .filter(r -> r.get("set").equals(set))
            .findFirst()
            .orElseThrow();
    int replicates = Integer.parseInt(certified.get("replicates_per_cell"));
    BandSample sample = paired(certified.get("constant_c"), replicates);
    double within = sample.to().variance().orElseThrow();
    RandomEffects.Result effects =
        RandomEffects.withDefaults().fit(sample.differencesDb(), sample.variances());
    // With equal v, tau² + v is the variance of the cell means.
    double between = replicates * (effects.tauSquared() + sample.variances()[0]);
    double[] expected = {
      number(certified, "ss_within") / number(certified, "df_within"),
      number(certified, "ss_between") / number(certified, "df_between"),
      number(certified, "f")
    };
    reaches(digits, set, expected, within, between, between / within);
  }

  /** Each treatment is a unit, each replicate a seating on the new fixture; the old one reads 0. */
  private static BandSample paired(String constant, int replicates) {
    List<Unit> units = new ArrayList<>();
    List<AnchoredCapture> captures = new ArrayList<>();
    for (int cell = 1; cell <= 9; cell++) {
      String name = "cell " + cell;
      units.add(new Unit(name, "kind", Unit.Role.FIT, "", "", cell));
      captures.add(capture(name, "A", 1, 0));
      for (int k = 0; k < replicates; k++) {
        captures.add(capture(name, "B", k + 1, replicate(constant, cell, k)));
      }
    }
    Study study =
        new Study(
            Path.of("."),
            "SmLs",
            new Fixture("A", "A", "", 20, 20_000),
            new Fixture("B", "B", "", 20, 20_000),
            units,
            captures.stream().map(c -> c.capture().entry()).toList(),
            List.of(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of());
    return new Pairing(study).pair(captures, Unit.Role.FIT).get(0).at(0);
  }

  /** The rule in the head of the table, in decimals, so that only the last step rounds. */
  private static double replicate(String constant, int cell, int k) {
    String base = cell == 1 ? "0.4" : cell % 2 == 0 ? "0.3" : "0.5";
    String step = k == 0 ? "0" : k % 2 == 1 ? "-0.1" : "0.1";
    return new BigDecimal(constant)
        .add(new BigDecimal(base))
        .add(new BigDecimal(step))
        .doubleValue();
  }

  private static AnchoredCapture capture(String unit, String fixture, int seating, double db) {
    CaptureEntry entry = new CaptureEntry(unit, fixture, Side.M, seating, "file", "", "", "", 1);
    Response unused = Response.copyOf(new double[] {100, 9000}, new double[] {0, 0});
    return new AnchoredCapture(
        new Capture(entry, unused, "x"), Levels.copyOf(ONE_BAND, new double[] {db}));
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

  private static void reaches(double digits, String set, double[] certified, double... found) {
    assertEquals(certified.length, found.length);
    double[] each = new double[found.length];
    Arrays.setAll(each, k -> digits(found[k], certified[k]));
    String reached =
        Arrays.stream(each)
            .mapToObj(d -> String.format(Locale.ROOT, "%.1f", d))
            .reduce(set + ": digits", (a, b) -> a + " " + b);
    System.out.println(reached);
    double least = Arrays.stream(each).min().orElseThrow();
    assertTrue(least >= digits, () -> reached + ", but at least " + digits + " are wanted");
  }

  private static double digits(double found, double certified) {
    double error = Math.abs(found - certified) / Math.abs(certified);
    return error == 0 ? 15 : Math.min(15, -Math.log10(error));
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
