package org.twinrig.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Fixture;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Faults of whole units, planted into kinds made of smooth random curves. */
class UnitDoubtsTest {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 6);
  private static final int SEATINGS = 3;

  private final double[][][][] open = kind(1, 12);
  private final double[][][][] tips = kind(2, 12);

  /** Levels by unit, fixture, seating and band. */
  private static double[][][][] kind(long seed, int units) {
    Random random = new Random(seed);
    double[] mean = smooth(random, 4);
    double[] transfer = smooth(random, 3);
    double[][][][] kind = new double[units][2][SEATINGS][];
    for (double[][][] unit : kind) {
      double[] own = smooth(random, 2);
      double[] stray = smooth(random, 0.5);
      for (int f = 0; f < 2; f++) {
        for (int s = 0; s < SEATINGS; s++) {
          double[] seating = smooth(random, 0.3);
          int fixture = f;
          unit[f][s] = new double[GRID.size()];
          Arrays.setAll(
              unit[f][s], b -> mean[b] + own[b] + seating[b] + fixture * (transfer[b] + stray[b]));
        }
      }
    }
    return kind;
  }

  private static double[] smooth(Random random, double db) {
    double[] curve = new double[GRID.size()];
    for (int wave = 1; wave <= 12; wave++) {
      double height = random.nextGaussian() * db / Math.sqrt(6);
      double phase = random.nextDouble() * 2 * Math.PI;
      int waves = wave;
      Arrays.setAll(curve, b -> curve[b] + height * Math.cos(phase + 0.05 * waves * b));
    }
    return curve;
  }

  private static PairedUnits paired(String kind, double[][][][] levels) {
    return new PairedUnits(
        kind,
        GRID,
        IntStream.range(0, levels.length).mapToObj(i -> kind + " " + i).toList(),
        fixture(levels, 0),
        fixture(levels, 1));
  }

  private static PairedUnits.OnFixture fixture(double[][][][] levels, int fixture) {
    List<Levels> means = new ArrayList<>();
    List<List<Integer>> counts = new ArrayList<>();
    List<List<Levels>> curves = new ArrayList<>();
    double[] pooled = new double[GRID.size()];
    for (double[][][] unit : levels) {
      double[][] seatings = unit[fixture];
      double[] mean = KindLikelihood.mean(seatings);
      for (double[] s : seatings) {
        Arrays.setAll(
            pooled,
            b ->
                pooled[b]
                    + (s[b] - mean[b]) * (s[b] - mean[b]) / levels.length / (seatings.length - 1));
      }
      means.add(Levels.copyOf(GRID, mean));
      counts.add(Collections.nCopies(GRID.size(), seatings.length));
      curves.add(Arrays.stream(seatings).map(s -> Levels.copyOf(GRID, s)).toList());
    }
    return new PairedUnits.OnFixture(means, counts, Levels.copyOf(GRID, pooled), curves);
  }

  private static Study study() {
    return new Study(
        Path.of("."),
        "made",
        new Fixture("plate", "Plate", "", 20, 20_000),
        new Fixture("head", "Head", "", 20, 20_000),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        Settings.defaults(),
        Path.of("."),
        List.of(),
        Map.of());
  }

  private List<Doubt> doubts() {
    return UnitDoubts.withoutExplained(
        UnitDoubts.of(study(), List.of(paired("open", open), paired("in-ear", tips))));
  }

  private String onlyDoubt() {
    List<Doubt> doubts = doubts();
    assertEquals(1, doubts.size(), () -> doubts.stream().map(Doubt::sentence).toList().toString());
    Doubt doubt = doubts.get(0);
    assertTrue(doubt.likelyCause().split(" ", -1).length <= 35, doubt::likelyCause);
    return doubt.sentence();
  }

  private static void exchange(double[][][][] some, int one, double[][][][] more, int two, int f) {
    double[][] kept = some[one][f];
    some[one][f] = more[two][f];
    more[two][f] = kept;
  }

  @Test
  void unitsWithoutAFaultAreNotDoubted() {
    assertEquals(List.of(), doubts());
  }

  @Test
  void fewUnitsAreNotJudged() {
    List<PairedUnits> few =
        List.of(paired("open", Arrays.copyOf(open, 3)), paired("in-ear", Arrays.copyOf(tips, 3)));
    assertEquals(List.of(), UnitDoubts.of(study(), few));
  }

  @Test
  void unitsOfOneKindThatChangedPlacesAreAPairOnEitherFixture() {
    exchange(open, 2, open, 7, 1);
    assertEquals(
        "Units exchanged (open 2 / open 7): as they stand they depart from their kind "
            + "26.6 times as far as exchanged on one fixture (doubted from 2.0 times on): two "
            + "units changed places, on which fixture the differences cannot tell. Their "
            + "differences widen the intervals of their kind. Compare both with their captures "
            + "on the other fixture, and exchange the names of the files that are wrong.",
        onlyDoubt());
  }

  @Test
  void unitsOfTwoKindsThatChangedPlacesAreAPairOnTheFixtureOnWhichTheyDid() {
    for (int fixture = 0; fixture < 2; fixture++) {
      exchange(open, 2, tips, 7, fixture);
      List<Doubt> doubts = doubts();
      assertEquals(List.of("open 2 / in-ear 7"), doubts.stream().map(Doubt::name).toList());
      assertEquals(UnitsExchanged.DOUBT, doubts.get(0).doubt());
      assertEquals(fixture == 0 ? "plate" : "head", doubts.get(0).fixture());
      exchange(open, 2, tips, 7, fixture);
    }
  }

  @Test
  void twoSidesOfOneSpecimenAreOneUnit() {
    for (int f = 0; f < 2; f++) {
      for (int s = 0; s < SEATINGS; s++) {
        int shift = s;
        double[] other = open[3][f][(s + 1) % SEATINGS];
        Arrays.setAll(open[5][f][s], b -> other[b] + 0.05 * Math.sin(b + shift));
      }
    }
    assertEquals(
        "One unit twice (open 3 / open 5): on both fixtures they differ by 0 % of what "
            + "other pairs of the kind do, 67.6 standard deviations less (doubted from 5.3 on): "
            + "left and right of one specimen, or a copy. One unit that counts as two makes "
            + "intervals too narrow. Enter both sides under one name, or leave the copy out.",
        onlyDoubt());
  }

  @Test
  void capturesOfAUnitUnderTheWrongFixtureAreOneDoubt() {
    double[][] old = tips[4][0];
    tips[4][0] = tips[4][1];
    tips[4][1] = old;
    assertEquals(
        "Fixtures exchanged (in-ear 4): the other way round its difference between the "
            + "fixtures is nearer to its kind's by 144.7 variances between units (doubted from "
            + "6.3 on): its captures are entered under the wrong fixture. Exchange the fixtures "
            + "of its rows in the table of captures.",
        onlyDoubt());
  }

  @Test
  void aUnitUnderTheWrongKindNamesTheLikelierOne() {
    tips[6] = kind(1, 13)[12];
    assertEquals(
        "Kind doubtful (in-ear 6): its captures fit the kind `open` better than `in-ear`, "
            + "and lie 30.4 standard deviations from how the other units of its kind fit "
            + "(doubted from 5.2 on): it is entered under the wrong kind. It moves its kind's "
            + "mean and widens its intervals. Correct its kind in the table of units; if it is "
            + "of this kind, confirm it.",
        onlyDoubt());
  }

  private static Doubt doubt(Doubt.Subject subject, String name, String word) {
    return Doubt.open(subject, name, "", word, new Doubt.Found("2", "1"), "why.", "do.");
  }

  @Test
  void theMoreSpecificDoubtAboutAUnitStands() {
    Doubt pair = doubt(Doubt.Subject.PAIR, "Elm / Oak", UnitsExchanged.DOUBT);
    Doubt twice = doubt(Doubt.Subject.PAIR, "Elm / Ash", OneUnitTwice.DOUBT);
    Doubt kind = doubt(Doubt.Subject.UNIT, "Ash", KindDoubtful.DOUBT);
    List<Doubt> all =
        List.of(
            doubt(Doubt.Subject.UNIT, "Elm", KindDoubtful.DOUBT),
            doubt(Doubt.Subject.UNIT, "Oak", "departs from its kind"),
            pair,
            twice,
            kind,
            doubt(Doubt.Subject.UNIT, "Ash", "departs from its kind"));
    assertEquals(List.of(pair, twice, kind), UnitDoubts.withoutExplained(all));
  }

  /** numpy, by the formulas of the classes; curves of sines, so that it can make them too. */
  @Test
  void theStatisticsAreThoseOfNumpy() {
    double[][][][] sines = new double[7][2][1][GRID.size()];
    for (int u = 0; u < 7; u++) {
      for (int f = 0; f < 2; f++) {
        for (int b = 0; b < GRID.size(); b++) {
          sines[u][f][0][b] =
              2 * Math.sin(1.7 * u + 0.11 * b * (1 + 0.1 * u))
                  + f * (Math.cos(0.2 * b) + 0.5 * Math.sin(2.3 * u + 0.07 * b * (1 + 0.2 * u)));
        }
      }
    }
    exchange(sines, 1, sines, 4, 1);
    PairedUnits paired = paired("made", sines);
    UnitsExchanged.Exchange exchange =
        UnitsExchanged.exchanges(List.of(paired)).stream()
            .filter(e -> e.one().equals("made 1") && e.other().equals("made 4"))
            .findFirst()
            .orElseThrow();
    assertEquals(5.377065508227826, exchange.ratio(), 1e-8);
    assertEquals(
        0.1783809348751895,
        OneUnitTwice.pairs(paired).stream()
            .filter(p -> p.one().equals("made 0") && p.other().equals("made 1"))
            .findFirst()
            .orElseThrow()
            .below(),
        1e-8);
    assertEquals(-8.874476180470808, FixturesExchanged.units(paired).get(1).gain(), 1e-8);
  }
}
