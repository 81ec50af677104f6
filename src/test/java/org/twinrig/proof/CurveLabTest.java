package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.proof.CurveLab.Unit;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;

/** The second simulator: the same from a seed, and as its parameters and its truth say. */
class CurveLabTest {
  private static final int MANY = 3000;

  /** So many standard errors; 140 dependent points of three kinds are looked at. */
  private static final double SIGMAS = 5;

  private final CurveLab lab = new CurveLab(11);

  private static CurveKind kind(String label) {
    return CurveKind.ALL.stream().filter(k -> k.label().equals(label)).findFirst().orElseThrow();
  }

  /** The point nearest to a frequency. */
  private int at(double hz) {
    double[] axis = lab.hz();
    return IntStream.range(0, axis.length)
        .boxed()
        .min((a, b) -> Double.compare(Math.abs(axis[a] - hz), Math.abs(axis[b] - hz)))
        .orElseThrow();
  }

  private static double mean(List<Unit> units, ToDoubleFunction<Unit> value) {
    return units.stream().mapToDouble(value).average().orElseThrow();
  }

  private static double variance(List<Unit> units, ToDoubleFunction<Unit> value) {
    double mean = mean(units, value);
    return mean(units, u -> Math.pow(value.applyAsDouble(u) - mean, 2));
  }

  @Test
  void itHasTheKindsOfEveryLaboratory() {
    assertEquals(Lab.KINDS, CurveKind.ALL.stream().map(CurveKind::label).toList());
  }

  @Test
  void theSameSeedAndKeyGiveTheSameUnits() {
    Measured once = lab.measure("in-ear", 3, Build.USUAL, 4, 5).get(1);
    Measured again = new CurveLab(11).measure("in-ear", 9, Build.USUAL, 4, 5).get(1);
    for (int seating = 0; seating < Lab.SEATINGS; seating++) {
      assertArrayEquals(once.from().get(seating), again.from().get(seating));
      assertArrayEquals(once.to().get(seating), again.to().get(seating));
    }
    for (Measured other :
        List.of(
            lab.measure("in-ear", 3, Build.USUAL, 4, 5).get(2),
            lab.measure("in-ear", 3, Build.USUAL, 4, 6).get(1),
            lab.measure("open over-ear", 3, Build.USUAL, 4, 5).get(1),
            new CurveLab(12).measure("in-ear", 3, Build.USUAL, 4, 5).get(1))) {
      assertFalse(Arrays.equals(once.from().get(0), other.from().get(0)));
      assertFalse(Arrays.equals(once.to().get(0), other.to().get(0)));
    }
  }

  /** On each fixture and in the difference, at every point. */
  @ParameterizedTest
  @ValueSource(strings = {"open over-ear", "closed over-ear", "in-ear"})
  void theTruthIsTheMeanOfManyUnits(String kind) {
    List<Unit> units = lab.units(kind, MANY, Build.USUAL, 1);
    double[] transfer = lab.meanTransferDb(kind);
    for (int i = 0; i < Lab.POINTS; i++) {
      int at = i;
      assertMean(lab.meanDb(kind, false)[i], units, u -> u.trueDb(false, at));
      assertMean(lab.meanDb(kind, true)[i], units, u -> u.trueDb(true, at));
      assertMean(transfer[i], units, u -> u.trueDb(true, at) - u.trueDb(false, at));
    }
  }

  private static void assertMean(double truth, List<Unit> units, ToDoubleFunction<Unit> value) {
    double error = Math.sqrt(variance(units, value) / units.size());
    assertEquals(truth, mean(units, value), SIGMAS * error);
  }

  /** Where no resonance reaches variances add up; skewed ones are known to a twentieth. */
  @ParameterizedTest
  @ValueSource(strings = {"open over-ear", "closed over-ear", "in-ear"})
  void unitsDifferAsTheParametersSay(String label) {
    CurveKind kind = kind(label);
    List<Unit> units = lab.units(label, MANY, Build.USUAL, 2);
    for (double hz : new double[] {15, 600}) {
      int i = at(hz);
      double exact = lab.hz()[i];
      double shape = 1 / (1 + Math.pow(exact / kind.leakHz(), 2));
      double low = 1 + 1 / (1 + Math.exp(-5 * Math.log(200 / exact)));
      double old = 9 + square(kind.tuningDb()) + square(kind.detailDb());
      double leak = square(kind.oldLeakDb() * shape);
      assertRatio(old + leak, variance(units, u -> u.trueDb(false, i)));
      double stray = square(kind.strayDb() * low);
      double leaks =
          square((kind.leakRatio() - 1) * kind.oldLeakDb() * shape)
              + square(kind.newLeakDb() * shape);
      ToDoubleFunction<Unit> transfer = u -> u.trueDb(true, i) - u.trueDb(false, i);
      assertRatio(stray + leaks, variance(units, transfer));
    }
  }

  private static void assertRatio(double expected, double found) {
    assertEquals(1, found / expected, 0.15);
  }

  private static double square(double value) {
    return value * value;
  }

  /** A leak can only take away: differences in the bass are long to the left. */
  @Test
  void leaksAreSkewed() {
    List<Unit> units = lab.units("in-ear", MANY, Build.USUAL, 3);
    int i = at(20);
    ToDoubleFunction<Unit> transfer = u -> u.trueDb(true, i) - u.trueDb(false, i);
    double mean = mean(units, transfer);
    double third = mean(units, u -> Math.pow(transfer.applyAsDouble(u) - mean, 3));
    assertTrue(third / Math.pow(variance(units, transfer), 1.5) < -0.2);
  }

  @Test
  void seatingsScatterAboutTheTruthOfTheUnit() {
    CurveKind kind = kind("closed over-ear");
    Unit unit = lab.units("closed over-ear", 1, Build.USUAL, 4).get(0);
    Measured measured = unit.measured(MANY);
    for (boolean onNew : new boolean[] {false, true}) {
      List<double[]> seatings = onNew ? measured.to() : measured.from();
      double[] mean = Measured.mean(seatings, MANY);
      double[] truth = unit.trueDb(onNew);
      double[] variance = new double[Lab.POINTS];
      for (int i = 0; i < Lab.POINTS; i++) {
        int at = i;
        variance[i] =
            seatings.stream().mapToDouble(s -> square(s[at] - mean[at])).average().orElseThrow();
        assertEquals(truth[i], mean[i], SIGMAS * Math.sqrt(variance[i] / MANY));
      }
      for (double hz : new double[] {15, 1000, 20_000}) {
        int i = at(hz);
        double exact = lab.hz()[i];
        double profile =
            1
                + 2 / (1 + Math.exp(-5 * Math.log(200 / exact)))
                + 3 / (1 + Math.exp(-5 * Math.log(exact / 8000)));
        double leak = kind.seatLeakDb(onNew) / (1 + square(exact / kind.leakHz()));
        double expected =
            square(kind.seatingDb() * profile) + square(leak) + square(CurveLab.NOISE_DB);
        assertRatio(expected, variance[i]);
      }
    }
  }

  /**
   * Near a resonance a unit's old curve foretells part of its difference; elsewhere it does not.
   */
  @Test
  void theOldCurveForetellsPartOfTheDifferenceNearResonances() {
    assertTrue(shareForetold(4700, 6700) > 0.3);
    assertTrue(shareForetold(400, 800) < 0.02);
  }

  /**
   * Largest squared correlation of the difference at the upper frequency and old steps about it.
   */
  private double shareForetold(double fromHz, double toHz) {
    List<Unit> units = lab.units("open over-ear", MANY, Build.USUAL, 5);
    int middle = (at(fromHz) + at(toHz)) / 2;
    double most = 0;
    for (int i = at(fromHz); i < at(toHz); i++) {
      int at = i;
      double r =
          correlation(
              units,
              u -> u.trueDb(true, middle) - u.trueDb(false, middle),
              u -> u.trueDb(false, at) - u.trueDb(false, at + 2));
      most = Math.max(most, r * r);
    }
    return most;
  }

  private static double correlation(
      List<Unit> units, ToDoubleFunction<Unit> x, ToDoubleFunction<Unit> y) {
    double meanX = mean(units, x);
    double meanY = mean(units, y);
    double together = mean(units, u -> (x.applyAsDouble(u) - meanX) * (y.applyAsDouble(u) - meanY));
    return together / Math.sqrt(variance(units, x) * variance(units, y));
  }

  @Test
  void aLeakTakesMoreAwayOnTheNewFixture() {
    CurveKind kind = kind("in-ear");
    Unit sealed = lab.units("in-ear", 1, Build.USUAL, 6).get(0);
    Unit leaky = lab.units("in-ear", 1, Build.LEAKY, 6).get(0);
    int i = at(10);
    double shape = 1 / (1 + square(10 / kind.leakHz()));
    double lost = CurveLab.LEAKY_DB * shape;
    assertEquals(lost, sealed.trueDb(false, i) - leaky.trueDb(false, i), 1e-9);
    assertEquals(kind.leakRatio() * lost, sealed.trueDb(true, i) - leaky.trueDb(true, i), 1e-9);
  }

  @Test
  void sidesOfOneHeadphoneAreAlikeAndNotTheSame() {
    List<Unit> sides = lab.units("closed over-ear", 4, Build.BOTH_SIDES, 7);
    assertEquals(4, sides.size());
    double alike = away(sides.get(0), sides.get(1));
    assertTrue(alike > 0.1 && alike < 1.5, () -> "" + alike);
    assertTrue(away(sides.get(1), sides.get(2)) > 2);
    for (int side = 0; side < 4; side += 2) {
      double[] left = transfer(sides.get(side));
      double[] right = transfer(sides.get(side + 1));
      assertArrayEquals(left, right, 1e-9);
    }
  }

  private static double[] transfer(Unit unit) {
    double[] to = unit.trueDb(true);
    double[] from = unit.trueDb(false);
    Arrays.setAll(to, i -> to[i] - from[i]);
    return to;
  }

  private static double away(Unit some, Unit other) {
    double[] a = some.trueDb(false);
    double[] b = other.trueDb(false);
    return Math.sqrt(
        IntStream.range(0, a.length).mapToDouble(i -> square(a[i] - b[i])).average().orElseThrow());
  }

  /** Standard deviation 1, and the stated correlation a length apart. */
  @Test
  void smoothCurvesHaveTheirSpreadAndLength() {
    double[] octaves = IntStream.range(0, 81).mapToDouble(i -> i / 8.0).toArray();
    SmoothCurves curves = new SmoothCurves(octaves, 0.5);
    double[] ones = octaves.clone();
    Arrays.fill(ones, 1);
    double[] squares = new double[octaves.length];
    double together = 0;
    int draws = 10_000;
    Chance chance = Chance.of(3);
    for (int draw = 0; draw < draws; draw++) {
      double[] curve = new double[octaves.length];
      curves.addTo(curve, ones, chance);
      for (int i = 0; i < curve.length; i++) {
        squares[i] += curve[i] * curve[i] / draws;
      }
      together += curve[40] * curve[44] / draws;
    }
    for (double square : squares) {
      assertEquals(1, square, SIGMAS * Math.sqrt(2.0 / draws));
    }
    assertEquals(Math.exp(-0.25), together, SIGMAS / Math.sqrt(draws));
  }

  /** R 4.2.2: {@code qt(.975, 3)} is 3.182446, {@code qnorm(.975)} is 1.959964. */
  @Test
  void chanceHasItsDistributions() {
    Chance chance = Chance.of(5, 1);
    int draws = 40_000;
    int beyondNormal = 0;
    int beyondT = 0;
    double exponential = 0;
    for (int draw = 0; draw < draws; draw++) {
      beyondNormal += Math.abs(chance.gaussian()) > 1.959964 ? 1 : 0;
      beyondT += Math.abs(chance.gaussian() * chance.heavyFactor()) > 3.182446 ? 1 : 0;
      exponential += chance.exponential(2) / draws;
    }
    double error = Math.sqrt(0.05 * 0.95 / draws);
    assertEquals(0.05, (double) beyondNormal / draws, 4 * error);
    assertEquals(0.05, (double) beyondT / draws, 4 * error);
    assertEquals(2, exponential, 4 * 2 / Math.sqrt(draws));
  }
}
