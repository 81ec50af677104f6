package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.UnitSample;
import org.twinrig.reliability.FixtureFeature.Curve;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** Contrasts of units seated several times, and their variances, in plain loops. */
class FeatureSamplesTest {
  private static final BandGrid GRID = new BandGrid(BandGrid.covering(500, 8000, 3).bands());
  private static final int BANDS = GRID.size();

  /** Levels of every seating of every unit on one fixture; NaN where a seating has none. */
  private static PairedUnits.OnFixture onFixture(double[][][] seatings) {
    List<Levels> means = new ArrayList<>();
    List<List<Integer>> counts = new ArrayList<>();
    List<List<Levels>> curves = new ArrayList<>();
    for (double[][] unit : seatings) {
      double[] mean = new double[BANDS];
      Integer[] count = new Integer[BANDS];
      for (int b = 0; b < BANDS; b++) {
        int band = b;
        double[] levels =
            Arrays.stream(unit).mapToDouble(s -> s[band]).filter(v -> !Double.isNaN(v)).toArray();
        count[b] = levels.length;
        mean[b] = Arrays.stream(levels).average().orElse(Double.NaN);
      }
      means.add(Levels.copyOf(GRID, mean));
      counts.add(List.of(count));
      curves.add(Arrays.stream(unit).map(s -> Levels.copyOf(GRID, s)).toList());
    }
    double[] unknown = new double[BANDS];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(means, counts, Levels.copyOf(GRID, unknown), curves);
  }

  private static double[][][] random(java.util.Random random, int... seatings) {
    double[][][] levels = new double[seatings.length][][];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = new double[seatings[i]][BANDS];
      for (double[] seating : levels[i]) {
        Arrays.setAll(seating, b -> random.nextGaussian());
      }
    }
    return levels;
  }

  private static FeatureSamples samples(double[][][] from, double[][][] to) {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < from.length; i++) {
      names.add("Alder " + (i + 1));
    }
    return new FeatureSamples(
        new PairedUnits("in-ear", GRID, names, onFixture(from), onFixture(to)));
  }

  /** At three bands per octave the octave is the band and its two neighbours. */
  private static double contrast(double[] curve, int b) {
    return curve[b] - (curve[b - 1] + curve[b] + curve[b + 1]) / 3;
  }

  /** Pooled variance of the seatings' contrasts about their unit's mean. */
  private static double pooled(double[][][] seatings, int b) {
    double squares = 0;
    int freedom = 0;
    for (double[][] unit : seatings) {
      double[] c =
          Arrays.stream(unit)
              .mapToDouble(s -> contrast(s, b))
              .filter(v -> !Double.isNaN(v))
              .toArray();
      double mean = Arrays.stream(c).average().orElse(0);
      squares += Arrays.stream(c).map(v -> Math.pow(v - mean, 2)).sum();
      freedom += c.length - 1;
    }
    return squares / freedom;
  }

  @Property(tries = 30)
  void variancesAreThoseOfTheContrastBetweenSeatings(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    java.util.Random random = new java.util.Random(seed);
    double[][][] from = random(random, 3, 1, 2, 4);
    double[][][] to = random(random, 2, 5, 1, 3);
    // One seating of the first unit lacks a band: there three become two, also for its neighbours.
    from[0][1][6] = Double.NaN;
    FeatureSamples samples = samples(from, to);
    List<UnitSample> old = samples.of(Curve.FROM);
    List<UnitSample> now = samples.of(Curve.TO);
    List<UnitSample> transfer = samples.of(Curve.TRANSFER);
    for (int b = 1; b < BANDS - 1; b++) {
      double[] fromVariances = new double[4];
      double[] toVariances = new double[4];
      int firstHas = Math.abs(b - 6) <= 1 ? 2 : 3;
      int[] fromSeatings = {firstHas, 1, 2, 4};
      int[] toSeatings = {2, 5, 1, 3};
      double[] difference = new double[4];
      double[] sum = new double[4];
      for (int i = 0; i < 4; i++) {
        fromVariances[i] = pooled(from, b) / fromSeatings[i];
        toVariances[i] = pooled(to, b) / toSeatings[i];
        sum[i] = fromVariances[i] + toVariances[i];
        difference[i] = contrast(mean(to[i]), b) - contrast(mean(from[i]), b);
      }
      assertArrayEquals(fromVariances, old.get(b).variances(), 1e-12);
      assertArrayEquals(toVariances, now.get(b).variances(), 1e-12);
      assertArrayEquals(sum, transfer.get(b).variances(), 1e-12);
      assertArrayEquals(difference, transfer.get(b).valuesDb(), 1e-12);
    }
    assertEquals(0, transfer.get(0).size(), "the octave around the first band is not covered");
    assertEquals(0, transfer.get(BANDS - 1).size());
  }

  private static double[] mean(double[][] seatings) {
    double[] mean = new double[BANDS];
    for (int b = 0; b < BANDS; b++) {
      int band = b;
      mean[b] =
          Arrays.stream(seatings)
              .mapToDouble(s -> s[band])
              .filter(v -> !Double.isNaN(v))
              .average()
              .orElse(Double.NaN);
    }
    return mean;
  }

  @Test
  void unitsSeatedOnceHaveNoKnownVariance() {
    java.util.Random random = new java.util.Random(1);
    FeatureSamples samples = samples(random(random, 1, 1, 1), random(random, 1, 1, 1));
    for (UnitSample sample : samples.of(Curve.TRANSFER).subList(1, BANDS - 1)) {
      assertArrayEquals(new double[3], sample.variances());
    }
  }

  /** A unit that lacks the octave on one fixture takes no part on the other either. */
  @Test
  void aGapOnEitherFixtureTakesTheUnitOut() {
    java.util.Random random = new java.util.Random(2);
    double[][][] from = random(random, 2, 2, 2);
    double[][][] to = random(random, 2, 2, 2);
    from[0][0][4] = Double.NaN;
    from[0][1][4] = Double.NaN;
    to[2][0][7] = Double.NaN;
    to[2][1][7] = Double.NaN;
    FeatureSamples samples = samples(from, to);
    for (Curve curve : Curve.values()) {
      for (int b = 1; b < BANDS - 1; b++) {
        List<Integer> members = new ArrayList<>(List.of(0, 1, 2));
        if (Math.abs(b - 4) <= 1) {
          members.remove(Integer.valueOf(0));
        }
        if (Math.abs(b - 7) <= 1) {
          members.remove(Integer.valueOf(2));
        }
        assertEquals(members, Arrays.stream(samples.of(curve).get(b).members()).boxed().toList());
      }
    }
  }
}
