package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.twinrig.ReferenceTable;
import org.twinrig.study.PredictionModel;

/**
 * The window ridge against numpy (brute-force refits; source in the heads of the tables), and its
 * closed forms and nested choice against a literal implementation that fits again and again.
 */
class WindowRidgeTest {

  @TestFactory
  Stream<DynamicTest> coefficientsAndErrorsAreThoseOfNumpy() {
    List<Map<String, String>> units = ReferenceTable.rows("window_ridge_units.csv");
    double[][] x = columns(units, "x");
    double[][] d = columns(units, "d");
    WindowData data = WindowData.of(KindOfNumbers.of(x, d, 12));
    return ReferenceTable.rows("window_ridge_results.csv").stream()
        .filter(row -> row.get("model").equals("ridge"))
        .map(row -> DynamicTest.dynamicTest(row.toString(), () -> agrees(data, row)));
  }

  private static void agrees(WindowData data, Map<String, String> row) {
    int band = Integer.parseInt(row.get("band")) - 1;
    WindowShape shape =
        new WindowShape(
            Integer.parseInt(row.get("half_width")), Integer.parseInt(row.get("borrow")));
    double kappa = Double.parseDouble(row.get("kappa"));
    StackedWindow window = StackedWindow.of(data, band, shape).orElseThrow();
    assertEquals(Double.parseDouble(row.get("s")), window.scale(), 1e-9);
    double[] beta = window.factor().ridge(window.differences(), kappa * window.scale());
    assertArrayEquals(numbers(row.get("beta")), beta, 1e-11);
    BlockDeletion blocks = new WindowDeletion(window).at(kappa);
    assertArrayEquals(
        numbers(row.get("loo_residuals")), WindowDeletion.withoutOne(blocks, 7), 1e-11);
  }

  /** Random shapes, more predictors than units and columns that depend on each other included. */
  @Property(tries = 60)
  void leavingOutOneOrTwoIsFittingAgainWithoutThem(
      @ForAll @IntRange(min = 4, max = 12) int units,
      @ForAll @IntRange(min = 1, max = 9) int bands,
      @ForAll @IntRange(min = 0, max = 6) int half,
      @ForAll @IntRange(min = 0, max = 2) int pooled,
      @ForAll @IntRange(min = 0, max = 5) int kappa,
      @ForAll boolean collinear,
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    double[][] x = smooth(units, bands, seed);
    double[][] d = smooth(units, bands, seed + 1);
    if (collinear) {
      Arrays.stream(x).forEach(unit -> Arrays.fill(unit, unit[0]));
    }
    LiteralWindowRidge literal = new LiteralWindowRidge(x, d);
    LiteralWindowRidge.Rule rule =
        new LiteralWindowRidge.Rule(half, pooled, LiteralWindowRidge.KAPPAS[kappa]);
    WindowData data = WindowData.of(KindOfNumbers.of(x, d, 12));
    int band = Math.floorMod(seed, bands);
    WindowDeletion deletion =
        new WindowDeletion(StackedWindow.of(data, band, new WindowShape(half, pooled)).get());
    BlockDeletion blocks = deletion.at(rule.kappa());
    double[] alone = literal.errors(band, rule, literal.members(band));
    double[] onPartner = new double[units];
    double[] onUnit = new double[units];
    double lambda = literal.lambda(band, rule);
    for (int i = 0; i < units; i++) {
      assertEquals(alone[i], blocks.withoutOne(i), 1e-8);
      blocks.withoutTwo(i, 0, onPartner, onUnit);
      for (int j = 0; j < units; j++) {
        if (j != i) {
          List<Integer> others = new ArrayList<>(literal.members(band));
          others.removeAll(List.of(i, j));
          assertEquals(literal.error(band, rule, others, j, lambda), onPartner[j], 1e-8);
          assertEquals(literal.error(band, rule, others, i, lambda), onUnit[j], 1e-8);
        }
      }
    }
  }

  @Test
  void theNestedChoiceIsTheLiteralOne() {
    agreesWithLiteral(smooth(8, 9, 11), 11, true);
  }

  @Test
  void theNestedChoiceIsTheLiteralOneAtTheFewestUnits() {
    agreesWithLiteral(smooth(6, 7, 12), 12, true);
    agreesWithLiteral(smooth(7, 7, 13), 13, true);
  }

  /** One unit ends early, and at the top no unit has any level. */
  @Test
  void theNestedChoiceIsTheLiteralOneWithLevelsMissing() {
    double[][] x = smooth(8, 10, 14);
    Arrays.fill(x[3], 5, 10, Double.NaN);
    for (double[] unit : x) {
      unit[9] = Double.NaN;
    }
    agreesWithLiteral(x, 14, true);
  }

  /** Differences that have nothing to do with the old levels: mostly the offset. */
  @Test
  void theNestedChoiceIsTheLiteralOneOnNoise() {
    agreesWithLiteral(smooth(8, 6, 15), 15, false);
  }

  /** The old graphs reach further than the new captures of one unit. */
  @Test
  void theNestedChoiceIsTheLiteralOneWhereOnlyTheNewLevelIsMissing() {
    double[][] d = smooth(8, 9, 1020);
    Arrays.fill(d[5], 6, 9, Double.NaN);
    agreesWithLiteral(smooth(8, 9, 20), d, true);
  }

  private static void agreesWithLiteral(double[][] x, int seed, boolean follows) {
    agreesWithLiteral(x, smooth(x.length, x[0].length, 1000 + seed), follows);
  }

  private static void agreesWithLiteral(double[][] x, double[][] d, boolean follows) {
    int bands = x[0].length;
    for (int i = 0; i < x.length; i++) {
      for (int b = 0; b < bands; b++) {
        double next = b + 1 < bands && !Double.isNaN(x[i][b + 1]) ? x[i][b + 1] : 0;
        d[i][b] = (follows ? 0.8 * next : 0) + 0.5 * d[i][b] + 0 * x[i][b];
      }
    }
    LiteralWindowRidge literal = new LiteralWindowRidge(x, d);
    KindEstimate estimate =
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 2).fit(KindOfNumbers.of(x, d, 12));
    int windows = 0;
    for (int b = 0; b < bands; b++) {
      if (literal.members(b).isEmpty()) {
        continue;
      }
      BandOutcome.Fitted fitted = (BandOutcome.Fitted) estimate.bands().get(b);
      sameRule(literal.chosen(b, -1, LiteralWindowRidge.rules()), fitted.prediction().window());
      windows += fitted.prediction().model() == BandOutcome.Model.WINDOW ? 1 : 0;
      for (int i : literal.members(b)) {
        LiteralWindowRidge.Rule rule = literal.chosen(b, i, LiteralWindowRidge.rules());
        double expected = literal.errors(b, rule, literal.members(b))[i];
        assertEquals(expected, estimate.errors().get(i).db(b), 1e-9, "band " + b + " unit " + i);
      }
    }
    assertTrue(windows > 0 || !follows || x.length == 6, "a case without a window tests little");
  }

  /** A study that asks for the window gets it also where it gains nothing, and its errors. */
  @Test
  void theWindowThatIsAskedForIsTheLiteralOne() {
    double[][] x = smooth(7, 8, 18);
    double[][] d = smooth(7, 8, 19);
    // At the top a unit is missing: the six others choose, the five without one of them cannot.
    x[2][7] = Double.NaN;
    d[2][7] = Double.NaN;
    LiteralWindowRidge literal = new LiteralWindowRidge(x, d);
    List<LiteralWindowRidge.Rule> rules = LiteralWindowRidge.rules();
    KindEstimate estimate =
        new TransferEstimator(0.95, PredictionModel.WINDOW, 1).fit(KindOfNumbers.of(x, d, 12));
    int loses = 0;
    for (int b = 0; b < 8; b++) {
      BandOutcome.Prediction prediction =
          ((BandOutcome.Fitted) estimate.bands().get(b)).prediction();
      sameRule(literal.window(b, -1, rules), prediction.window());
      List<Integer> all = literal.members(b);
      double[] offset = literal.errors(b, LiteralWindowRidge.Rule.OFFSET, all);
      double squares = 0;
      for (int i : all) {
        LiteralWindowRidge.Rule rule = literal.window(b, i, rules);
        double expected = literal.errors(b, rule, all)[i];
        assertEquals(expected, estimate.errors().get(i).db(b), 1e-9, "band " + b + " unit " + i);
        assertEquals(offset[i], estimate.offsetErrors().get(i).db(b), 1e-9);
        squares += offset[i] * offset[i];
      }
      assertEquals(Math.sqrt(squares / all.size()), prediction.looRmsOffsetDb(), 1e-9);
      loses += prediction.looRmsDb() > prediction.looRmsOffsetDb() ? 1 : 0;
    }
    assertTrue(loses > 0, "a case in which the window always gains tests little");
  }

  /** Errors, coefficients and leverage of the mean against weights and refits made word by word. */
  @Test
  void theAverageIsTheLiteralOne() {
    double[][] x = smooth(9, 7, 16);
    double[][] d = smooth(9, 7, 17);
    for (int i = 0; i < 9; i++) {
      for (int b = 0; b < 6; b++) {
        d[i][b] += 0.5 * x[i][b + 1];
      }
    }
    LiteralWindowRidge literal = new LiteralWindowRidge(x, d);
    List<LiteralWindowRidge.Rule> rules = LiteralWindowRidge.rules();
    var paired = KindOfNumbers.of(x, d, 12);
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(paired);
    for (int b = 0; b < 7; b++) {
      List<Integer> all = literal.members(b);
      for (int i : all) {
        double[] weights = literal.weights(b, i, rules);
        double error = weights[0] * literal.errors(b, LiteralWindowRidge.Rule.OFFSET, all)[i];
        for (int c = 1; c < weights.length; c++) {
          error += weights[c] == 0 ? 0 : weights[c] * literal.errors(b, rules.get(c - 1), all)[i];
        }
        assertEquals(error, estimate.errors().get(i).db(b), 1e-9);
      }
      WindowRule rule =
          ((BandOutcome.Fitted) estimate.bands().get(b)).prediction().window().orElseThrow();
      double[] weights = literal.weights(b, -1, rules);
      double shift = 0;
      int band = b;
      double mean = all.stream().mapToDouble(i -> d[i][band]).average().orElseThrow();
      for (int c = 1; c < weights.length; c++) {
        if (weights[c] > 0) {
          LiteralWindowRidge.Rule window = rules.get(c - 1);
          var fit = literal.new Fit(b, window, all, literal.lambda(b, window));
          shift += weights[c] * (fit.predict(2) - mean);
        }
      }
      assertEquals(mean + shift, rule.shiftDb(paired.from().means().get(2)).orElseThrow(), 1e-9);
      assertTrue(rule.leverage(paired.from().means().get(2), 9) < 1);
    }
  }

  private static void sameRule(
      LiteralWindowRidge.Rule expected, java.util.Optional<WindowRule> actual) {
    assertEquals(Double.isInfinite(expected.kappa()), actual.isEmpty());
    actual.ifPresent(
        rule -> {
          assertEquals(expected.h() / 12.0, rule.halfOctaves(), 1e-12);
          assertEquals(expected.pooled() / 12.0, rule.pooledOctaves(), 1e-12);
          assertEquals(expected.kappa(), rule.shrinkage());
        });
  }

  @Test
  void theOutcomeDoesNotDependOnThreads() {
    double[][] x = smooth(40, 30, 21);
    double[][] d = smooth(40, 30, 22);
    for (int i = 0; i < 40; i++) {
      for (int b = 0; b < 29; b++) {
        d[i][b] += x[i][b + 1];
      }
    }
    var paired = KindOfNumbers.of(x, d, 12);
    KindEstimate one = new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(paired);
    KindEstimate eight = new TransferEstimator(0.95, PredictionModel.AVERAGE, 8).fit(paired);
    assertEquals(one, eight);
    assertTrue(
        one.bands().stream()
            .anyMatch(
                b -> b instanceof BandOutcome.Fitted f && f.prediction().window().isPresent()));
  }

  @Test
  void aStudyMayAskForOneModel() {
    double[][] x = smooth(9, 5, 31);
    double[][] d = smooth(9, 5, 32);
    var paired = KindOfNumbers.of(x, d, 12);
    for (BandOutcome b :
        new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired).bands()) {
      BandOutcome.Prediction p = ((BandOutcome.Fitted) b).prediction();
      assertTrue(p.window().isEmpty());
      assertEquals(p.looRmsOffsetDb(), p.looRmsDb());
    }
    for (BandOutcome b :
        new TransferEstimator(0.95, PredictionModel.WINDOW, 1).fit(paired).bands()) {
      assertTrue(((BandOutcome.Fitted) b).prediction().window().isPresent());
    }
  }

  /** At every resolution a step is 1/12 octave or one band, whichever is wider. */
  @Test
  void windowsHaveAtMostThirteenPredictors() {
    assertEquals(15, WindowShape.all(12).size());
    assertEquals(WindowShape.all(12), WindowShape.all(24));
    assertEquals(WindowShape.all(12), WindowShape.all(48));
    assertEquals(4, WindowShape.step(48));
    assertEquals(
        List.of(new WindowShape(0, 0)), WindowShape.all(1), "half an octave is not a whole band");
    assertEquals(
        List.of(
            new WindowShape(0, 0),
            new WindowShape(0, 1),
            new WindowShape(1, 0),
            new WindowShape(1, 1),
            new WindowShape(2, 0),
            new WindowShape(2, 1),
            new WindowShape(3, 0),
            new WindowShape(3, 1)),
        WindowShape.all(6));
  }

  /** Curves whose neighbouring bands are alike, as levels are. */
  private static double[][] smooth(int units, int bands, int seed) {
    Random random = new Random(seed);
    double[][] curves = new double[units][bands];
    for (double[] curve : curves) {
      double level = 0;
      for (int b = 0; b < bands; b++) {
        level = 0.7 * level + random.nextGaussian();
        curve[b] = level;
      }
    }
    return curves;
  }

  private static double[][] columns(List<Map<String, String>> units, String name) {
    double[][] values = new double[units.size()][6];
    for (int i = 0; i < values.length; i++) {
      for (int b = 0; b < 6; b++) {
        values[i][b] = Double.parseDouble(units.get(i).get(name + (b + 1)));
      }
    }
    return values;
  }

  private static double[] numbers(String list) {
    return Arrays.stream(list.split(";", -1)).mapToDouble(Double::parseDouble).toArray();
  }
}
