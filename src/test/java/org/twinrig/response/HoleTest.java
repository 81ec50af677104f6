package org.twinrig.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/** What was not measured has no level, however straight the line across. */
class HoleTest {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);

  /** Preferred numbers of ISO 3, series R 10 (mid-band frequencies of ISO 266) and R 20. */
  private static final double[] R10 = {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8};

  private static final double[] R20 = {
    1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9
  };

  private static Response wavy(double... hz) {
    return Response.copyOf(
        hz, Arrays.stream(hz).map(f -> 80 + 3 * Math.sin(2 * Math.log(f))).toArray());
  }

  private static double[] spaced(double fromHz, double toHz, double perOctave) {
    int steps = (int) Math.ceil(perOctave * Math.log(toHz / fromHz) / Math.log(2));
    double[] hz = new double[steps + 1];
    Arrays.setAll(hz, i -> fromHz * Math.pow(toHz / fromHz, i / (double) steps));
    return hz;
  }

  private static double[] preferred(double[] series) {
    return DoubleStream.of(10, 100, 1000, 10_000)
        .flatMap(decade -> Arrays.stream(series).map(n -> n * decade))
        .toArray();
  }

  private static double[] without(double[] hz, double lowHz, double highHz) {
    return Arrays.stream(hz).filter(f -> f <= lowHz || f >= highHz).toArray();
  }

  @Test
  void bandsInAHoleHaveNoLevel() {
    double[] all = spaced(15, 22_000, 24);
    double[] left = without(all, 1100, 7000);
    double belowHz = Arrays.stream(left).filter(f -> f <= 1100).max().orElseThrow();
    double aboveHz = Arrays.stream(left).filter(f -> f >= 7000).min().orElseThrow();
    Levels whole = Levels.of(wavy(all), GRID);
    Levels holed = Levels.of(wavy(left), GRID);
    for (int b = 0; b < GRID.size(); b++) {
      Band band = GRID.band(b);
      boolean reached = band.upperHz() > belowHz && band.lowerHz() < aboveHz;
      assertEquals(!reached, holed.has(b), band.toString());
      assertFalse(holed.isCoarse(b));
      if (!reached) {
        assertEquals(whole.db(b), holed.db(b), 0.0);
      }
    }
  }

  @Test
  void twoPointsAreNoCurve() {
    assertEquals(0, Levels.of(wavy(10, 30_000), GRID).present());
    assertEquals(OptionalDouble.empty(), wavy(10, 30_000).levelAt(1000));
    assertEquals(80 + 3 * Math.sin(2 * Math.log(10)), wavy(10, 30_000).levelAt(10).orElseThrow());
  }

  @Test
  void tablesOfThirdOctavesHaveCoarseLevelsAndTablesOfSixthsSound() {
    double[] exact = new double[34];
    Arrays.setAll(exact, i -> 1000 * Math.pow(10, (i - 20) / 10.0));
    for (double[] thirds : List.of(preferred(R10), exact)) {
      for (int perOctave : List.of(1, 3, 12, 48)) {
        BandGrid grid = BandGrid.covering(25, 16_000, perOctave);
        Levels levels = Levels.of(wavy(thirds), grid);
        for (int b = 0; b < grid.size(); b++) {
          boolean inside = reaches(thirds, grid.band(b));
          assertEquals(inside, levels.has(b), grid.band(b).toString());
          assertEquals(inside, levels.isCoarse(b), grid.band(b).toString());
        }
      }
    }
    double[] exactSixths = new double[68];
    Arrays.setAll(exactSixths, i -> 1000 * Math.pow(10, (i - 40) / 20.0));
    for (double[] sixths : List.of(preferred(R20), exactSixths, spaced(10, 25_000, 6))) {
      Levels levels = Levels.of(wavy(sixths), GRID);
      for (int b = 0; b < GRID.size(); b++) {
        assertTrue(levels.has(b) && !levels.isCoarse(b), GRID.band(b).toString());
      }
    }
  }

  @Test
  void stepsOfAFourierTransformAreCoarseBelowSevenOfThem() {
    double[] hz = new double[5000];
    Arrays.setAll(hz, i -> 5.0 * (i + 1));
    Levels levels = Levels.of(wavy(hz), GRID);
    for (int b = 0; b < GRID.size(); b++) {
      // The hole is the step from 15 Hz to 20 Hz; that from 30 Hz to 35 Hz is coarse.
      assertEquals(GRID.band(b).lowerHz() >= 20, levels.has(b), GRID.band(b).toString());
      assertEquals(levels.has(b) && GRID.band(b).lowerHz() < 35, levels.isCoarse(b));
    }
  }

  @Test
  void aSumHasTheHolesOfBoth() {
    Response dense = wavy(spaced(12, 24_000, 48));
    assertEquals(0, Levels.of(wavy(10, 30_000).plus(dense).orElseThrow(), GRID).present());
    assertEquals(0, Levels.of(dense.plus(wavy(10, 30_000)).orElseThrow(), GRID).present());
    Response holed = wavy(without(spaced(10, 25_000, 24), 1100, 7000));
    Levels summed = Levels.of(holed.plus(dense).orElseThrow().plus(3), GRID);
    Levels alone = Levels.of(holed, GRID);
    Levels coarse = Levels.of(dense.plus(wavy(preferred(R10))).orElseThrow(), GRID);
    for (int b = 0; b < GRID.size(); b++) {
      assertEquals(alone.has(b), summed.has(b));
      assertEquals(coarse.has(b), coarse.isCoarse(b));
    }
    assertTrue(coarse.present() > 100);
    // Two holes with one point of the other curve between: still no level.
    assertEquals(
        OptionalDouble.empty(),
        wavy(10, 20_000).plus(wavy(10, 900, 20_000)).orElseThrow().levelAt(500));
  }

  @Test
  void smoothingDoesNotReachAcrossAHole() {
    double[] hz = without(spaced(10, 25_000, 24), 1100, 7000);
    double[] db = Arrays.stream(hz).map(f -> f < 2000 ? 60 : 100).toArray();
    Response smooth = new Smoothing(1).apply(Response.copyOf(hz, db));
    for (int p = 0; p < hz.length; p++) {
      assertEquals(db[p], smooth.levelDb(p), 1e-9);
    }
    Response lonely = Response.copyOf(new double[] {100, 1000, 10_000}, new double[] {1, 50, 2});
    assertEquals(lonely, new Smoothing(3).apply(lonely));
    Response sum = wavy(10, 30_000).plus(wavy(spaced(12, 24_000, 48))).orElseThrow();
    assertEquals(0, Levels.of(new Smoothing(3).apply(sum), GRID).present());
  }

  @Test
  void anAnchorInAHoleDoesNotPin() {
    Response holed = wavy(100, 110, 120, 1100, 1000 * 7, 7200);
    Anchor.Frequency at = new Anchor.Frequency(2000);
    assertEquals(OptionalDouble.empty(), at.levelOf(holed, 12));
    assertEquals(
        Optional.of(
            "has no point between 1.1 kHz and 7 kHz, but the anchor (2 kHz) needs points no"
                + " further apart than 1/3 octave"),
        at.holeIn(holed, 12));
    assertTrue(new Anchor.Frequency(1100).levelOf(holed, 12).isPresent());
    assertEquals(Optional.empty(), new Anchor.Frequency(115).holeIn(holed, 12));
    assertEquals(
        Optional.of(
            "has no point between 120 Hz and 1.1 kHz, but the anchor (300 Hz to 1 kHz) needs points"
                + " no further apart than 1/3 octave"),
        new Anchor.Range(300, 1000).holeIn(holed, 12));
    assertEquals(OptionalDouble.empty(), new Anchor.Range(300, 1000).levelOf(holed, 12));
    assertEquals(Optional.empty(), new Anchor.None().holeIn(holed, 12));
  }

  @Property(tries = 300)
  void aBandHasALevelWhereEveryGapAllowsIt(@ForAll("frequencies") double[] hz) {
    Levels levels = Levels.of(wavy(hz), GRID);
    for (int b = 0; b < GRID.size(); b++) {
      Band band = GRID.band(b);
      double widest = 0;
      for (int i = 1; i < hz.length; i++) {
        if (hz[i] > band.lowerHz() && hz[i - 1] < band.upperHz()) {
          widest = Math.max(widest, hz[i] / hz[i - 1]);
        }
      }
      assertEquals(
          reaches(hz, band) && widest <= 1.28 * (1 + 1e-9), levels.has(b), band.toString());
      assertEquals(levels.has(b) && widest > 8 / 7.0 * (1 + 1e-9), levels.isCoarse(b));
    }
  }

  @Property(tries = 300)
  void morePointsTakeNoLevelAway(
      @ForAll("frequencies") double[] hz, @ForAll("frequencies") double[] more) {
    TreeSet<Double> all = new TreeSet<>();
    Arrays.stream(hz).forEach(all::add);
    Arrays.stream(more).forEach(all::add);
    Levels few = Levels.of(wavy(hz), GRID);
    Levels many = Levels.of(wavy(all.stream().mapToDouble(f -> f).toArray()), GRID);
    for (int b = 0; b < GRID.size(); b++) {
      // Where a curve ends inside a band, a point far beyond its end makes a hole of what was flat.
      boolean inside =
          hz[0] <= GRID.band(b).lowerHz() && GRID.band(b).upperHz() <= hz[hz.length - 1];
      assertTrue(!inside || !few.has(b) || many.has(b));
      assertTrue(!inside || !few.has(b) || few.isCoarse(b) || !many.isCoarse(b));
    }
  }

  /** To within a quarter of a band. */
  private static boolean reaches(double[] hz, Band band) {
    double quarter = Math.pow(band.upperHz() / band.lowerHz(), 0.25);
    return band.lowerHz() * quarter >= hz[0] && band.upperHz() / quarter <= hz[hz.length - 1];
  }

  @Provide
  Arbitrary<double[]> frequencies() {
    return Arbitraries.doubles()
        .between(0.01, 0.32)
        .list()
        .ofMinSize(1)
        .ofMaxSize(120)
        .map(
            steps -> {
              double[] hz = new double[steps.size() + 1];
              hz[0] = 15;
              for (int i = 1; i < hz.length; i++) {
                hz[i] = hz[i - 1] * Math.exp(steps.get(i - 1));
              }
              return hz;
            });
  }

  @Test
  void aCurveIsTheSameAtAnotherLevelAndAtOtherPoints() {
    Response curve = wavy(spaced(10, 22_000, 24));
    double[] every = spaced(10, 22_000, 24);
    double[] jitter = new double[every.length];
    Arrays.setAll(jitter, i -> curve.levelDb(i) + (i % 2 == 0 ? 0.0009 : -0.0009));
    assertTrue(curve.sameShape(curve.plus(-7.123), 0));
    assertTrue(curve.sameShape(curve.withLevels(jitter), 0.001));
    assertFalse(curve.sameShape(curve.withLevels(jitter), 0.0008));
    double[] half =
        DoubleStream.concat(Arrays.stream(every), Arrays.stream(spaced(11, 21_000, 7)))
            .sorted()
            .distinct()
            .toArray();
    Response resampled =
        Response.copyOf(
            half, Arrays.stream(half).map(f -> curve.levelAt(f).orElseThrow()).toArray());
    assertTrue(curve.sameShape(resampled, 0.001) && resampled.sameShape(curve, 0.001));
    double[] moved = new double[every.length];
    Arrays.setAll(moved, i -> curve.levelDb(i) + (i == 100 ? 0.003 : 0));
    assertFalse(curve.sameShape(curve.withLevels(moved), 0.001));
    Response part = wavy(Arrays.copyOf(every, 30));
    assertFalse(curve.sameShape(part, 0.001), "too small a part to tell");
    assertNotEquals(curve, curve.withLevels(moved));
  }
}
