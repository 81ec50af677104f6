package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** What a fitted window says of a graph, by hand and by the equations that define it. */
class WindowRuleTest {
  private static final BandGrid FOUR =
      new BandGrid(BandGrid.covering(100, 2000, 3).bands().subList(0, 4));

  private static WindowRule rule(double meanDb, List<WindowRule.Predictor> p, List<Double> spread) {
    return new WindowRule(0.25, meanDb, p, spread, OptionalDouble.empty());
  }

  private static Levels graph(double... db) {
    return Levels.copyOf(FOUR, db);
  }

  private static final List<WindowRule.Predictor> TWO =
      List.of(new WindowRule.Predictor(1, 0.5, 10), new WindowRule.Predictor(3, -1, 20));

  /** 1 + 0.5·(12 - 10) - 1·(19 - 20) = 3; (2, -1) under (4 1; 1 9) is 21. */
  @Test
  void shiftAndLeverageByHand() {
    WindowRule rule = rule(1, TWO, List.of(4.0, 1.0, 9.0));
    Levels graph = graph(0, 12, Double.NaN, 19);
    assertEquals(3, rule.shiftDb(graph), 1e-12);
    assertTrue(rule.covers(graph));
    assertEquals(0.2 + 21, rule.leverage(graph, 5), 1e-12);
    assertArrayEquals(new double[] {7, -7}, rule.spread(new double[] {2, -1}), 1e-12);
    assertEquals(2, rule.shiftDb(graph(0, 12, 0, Double.NaN)), 1e-12);
    assertEquals(2, rule.shiftDb(graph(0, Double.NaN, 0, 19)), 1e-12);
    assertFalse(rule.covers(graph(0, 12, 0, Double.NaN)));
    WindowRule impossible = rule(1, TWO, List.of(-4.0, 1.0, -9.0));
    assertEquals(Double.POSITIVE_INFINITY, impossible.leverage(graph, 5));
  }

  @Test
  void partsMustFitTogether() {
    assertThrows(IllegalArgumentException.class, () -> rule(1, List.of(), List.of()));
    assertThrows(IllegalArgumentException.class, () -> rule(1, TWO, List.of(4.0, 1.0)));
    List<WindowRule.Predictor> falling = List.of(TWO.get(1), TWO.get(0));
    assertThrows(IllegalArgumentException.class, () -> rule(1, falling, List.of(4.0, 1.0, 9.0)));
    List<WindowRule.Predictor> twice = List.of(TWO.get(0), TWO.get(0));
    assertThrows(IllegalArgumentException.class, () -> rule(1, twice, List.of(4.0, 1.0, 9.0)));
    WindowRule rule = rule(1, TWO, List.of(4.0, 1.0, 9.0));
    assertThrows(IllegalArgumentException.class, () -> rule.spread(new double[3]));
  }

  @Test
  void theWeightOfTheOffsetIsAShare() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new WindowRule(1.1, 0, TWO, List.of(4.0, 1.0, 9.0), OptionalDouble.empty()));
  }

  /**
   * A quarter of one window and half of another, the offset's quarter left: coefficients are
   * weighted sums, the spread is a weighted mean.
   */
  @Test
  void aMeanOfWindowsSaysTheMeanOfWhatTheySay() {
    Random random = new Random(5);
    double[][] x = new double[8][7];
    double[][] d = new double[8][7];
    for (int i = 0; i < 8; i++) {
      x[i] = random.doubles(7, -2, 2).toArray();
      d[i] = random.doubles(7, -2, 2).toArray();
    }
    PairedUnits paired = KindOfNumbers.of(x, d, 12);
    WindowRule one = alone(paired, 3, new WindowShape(1, 0), 0.3);
    WindowRule two = alone(paired, 3, new WindowShape(2, 1), 0.03);
    WindowData data = WindowData.of(paired);
    WeightedWindows windows = new WeightedWindows(data, 3);
    windows.add(0.25, StackedWindow.of(data, 3, new WindowShape(1, 0)).orElseThrow(), 0.3);
    windows.add(0.5, StackedWindow.of(data, 3, new WindowShape(2, 1)).orElseThrow(), 0.03);
    WindowRule mean = windows.rule(paired).orElseThrow();
    Levels graph = Levels.copyOf(paired.grid(), random.doubles(7, -2, 2).toArray());
    double offset = Arrays.stream(d).mapToDouble(u -> u[3]).average().orElseThrow();
    assertEquals(
        0.25 * one.shiftDb(graph) + 0.5 * two.shiftDb(graph) + 0.25 * offset,
        mean.shiftDb(graph),
        1e-12);
    assertEquals(
        (one.leverage(graph, 8) + 2 * two.leverage(graph, 8)) / 3, mean.leverage(graph, 8), 1e-12);
    assertEquals(0.25, mean.offsetWeight(), 1e-12);
    assertEquals(List.of(1, 2, 3, 4, 5), bandsOf(mean));
  }

  private static WindowRule alone(PairedUnits paired, int band, WindowShape shape, double kappa) {
    WindowData data = WindowData.of(paired);
    WeightedWindows windows = new WeightedWindows(data, band);
    windows.add(1, StackedWindow.of(data, band, shape).orElseThrow(), kappa);
    return windows.rule(paired).orElseThrow();
  }

  /**
   * The window at the middle band of seven, without borrowing: its coefficients solve {@code (WᵀW +
   * λI) β = Wᵀy}, its spread is the inverse of that matrix, and its seating variance is that of
   * {@code x(b) + Σ β_c x(c)} between seatings.
   */
  @Property(tries = 40)
  void aFittedRuleSolvesItsEquations(
      @ForAll @IntRange(min = 4, max = 9) int units,
      @ForAll @IntRange(min = 0, max = 3) int half,
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    Random random = new Random(seed);
    double[][][] seatings = new double[units][][];
    for (int i = 0; i < units; i++) {
      seatings[i] = new double[1 + random.nextInt(3)][7];
      for (double[] seating : seatings[i]) {
        Arrays.setAll(seating, b -> 3 * Math.sin(b) + random.nextGaussian());
      }
    }
    seatings[0] = new double[][] {seatings[0][0], random.doubles(7, -1, 1).toArray()};
    double[][] x = Arrays.stream(seatings).map(WindowRuleTest::mean).toArray(double[][]::new);
    double[][] d = new double[units][];
    Arrays.setAll(d, i -> random.doubles(7, -3, 3).toArray());
    PairedUnits paired = seated(KindOfNumbers.of(x, d, 12), seatings);
    WindowRule rule = alone(paired, 3, new WindowShape(half, 0), 0.3);
    int p = 2 * half + 1;
    double[][] w = new double[units][p];
    double squares = 0;
    for (int c = 0; c < p; c++) {
      int band = 3 - half + c;
      double centre = Arrays.stream(x).mapToDouble(u -> u[band]).average().orElseThrow();
      assertEquals(band, rule.predictors().get(c).band());
      assertEquals(centre, rule.predictors().get(c).centreDb(), 1e-12);
      for (int i = 0; i < units; i++) {
        w[i][c] = x[i][band] - centre;
        squares += w[i][c] * w[i][c];
      }
    }
    double[] beta =
        rule.predictors().stream().mapToDouble(WindowRule.Predictor::coefficient).toArray();
    double[] v = random.doubles(p, -1, 1).toArray();
    double[] spread = rule.spread(v);
    double lambda = 0.3 * squares / p;
    double meanDb = Arrays.stream(d).mapToDouble(u -> u[3]).average().orElseThrow();
    assertEquals(meanDb, rule.meanDb(), 1e-12);
    for (int c = 0; c < p; c++) {
      double left = lambda * beta[c];
      double back = lambda * spread[c];
      double right = 0;
      for (int i = 0; i < units; i++) {
        left += w[i][c] * dot(w[i], beta);
        back += w[i][c] * dot(w[i], spread);
        right += w[i][c] * (d[i][3] - meanDb);
      }
      assertEquals(right, left, 1e-9);
      assertEquals(v[c], back, 1e-9);
    }
    double between = 0;
    int freedom = 0;
    for (double[][] unit : seatings) {
      double[] sums =
          Arrays.stream(unit)
              .mapToDouble(s -> s[3] + dot(Arrays.copyOfRange(s, 3 - half, 4 + half), beta))
              .toArray();
      double mean = Arrays.stream(sums).average().orElseThrow();
      between += Arrays.stream(sums).map(s -> (s - mean) * (s - mean)).sum();
      freedom += sums.length - 1;
    }
    assertEquals(between / freedom, rule.seatingVariance().orElseThrow(), 1e-9);
    assertEquals(0, rule.offsetWeight(), 1e-12);
  }

  /** At 24 bands per octave a window takes every second band, as if the others were not there. */
  @Test
  void aFinerGridIsTakenInStepsOfATwelfthOfAnOctave() {
    Random random = new Random(9);
    double[][] fineX = new double[8][9];
    double[][] fineD = new double[8][9];
    double[][] x = new double[8][5];
    double[][] d = new double[8][5];
    for (int i = 0; i < 8; i++) {
      fineX[i] = random.doubles(9, -2, 2).toArray();
      fineD[i] = random.doubles(9, -2, 2).toArray();
      for (int b = 0; b < 5; b++) {
        x[i][b] = fineX[i][2 * b];
        d[i][b] = fineD[i][2 * b];
      }
    }
    PairedUnits fine = KindOfNumbers.of(fineX, fineD, 24);
    PairedUnits coarse = KindOfNumbers.of(x, d, 12);
    WindowShape shape = new WindowShape(1, 1);
    WindowRule inSteps = alone(fine, 4, shape, 0.1);
    WindowRule plain = alone(coarse, 2, shape, 0.1);
    assertEquals(List.of(2, 4, 6), bandsOf(inSteps));
    assertEquals(List.of(1, 2, 3), bandsOf(plain));
    for (int k = 0; k < 3; k++) {
      assertEquals(
          plain.predictors().get(k).coefficient(),
          inSteps.predictors().get(k).coefficient(),
          1e-12);
    }
  }

  private static List<Integer> bandsOf(WindowRule rule) {
    return rule.predictors().stream().map(WindowRule.Predictor::band).toList();
  }

  private static double dot(double[] a, double[] b) {
    return IntStream.range(0, a.length).mapToDouble(k -> a[k] * b[k]).sum();
  }

  private static double[] mean(double[][] seatings) {
    return IntStream.range(0, seatings[0].length)
        .mapToDouble(b -> Arrays.stream(seatings).mapToDouble(s -> s[b]).average().orElseThrow())
        .toArray();
  }

  /** The same units with the curves of their seatings on the old fixture. */
  private static PairedUnits seated(PairedUnits plain, double[][][] seatings) {
    List<List<Levels>> curves = new ArrayList<>();
    List<List<Integer>> counts = new ArrayList<>();
    for (double[][] unit : seatings) {
      curves.add(Arrays.stream(unit).map(s -> Levels.copyOf(plain.grid(), s)).toList());
      counts.add(java.util.Collections.nCopies(plain.grid().size(), unit.length));
    }
    return new PairedUnits(
        plain.kind(),
        plain.grid(),
        plain.units(),
        new PairedUnits.OnFixture(
            plain.from().means(), counts, plain.from().seatingVariance(), curves),
        plain.to());
  }
}
