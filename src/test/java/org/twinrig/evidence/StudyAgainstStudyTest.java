package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/** Differences between studies, and their combination. */
class StudyAgainstStudyTest {
  private static final BandGrid GRID = BandGrid.covering(100, 10_000, 6);
  private static final MeanDifference.Terms TERMS =
      new MeanDifference.Terms(0.5, 0.95, new Anchor.None());

  /** Student 1908; R 4.2.2: t.test(drug_1, drug_2). */
  @Test
  void aDifferenceAtOneBandIsWelchs() {
    List<Map<String, String>> sleep = ReferenceTable.rows("ttest_student_1908_sleep.csv");
    MeanDifference.Welch welch =
        MeanDifference.Welch.of(
            plainMean(ReferenceTable.column(sleep, "drug_1")),
            plainMean(ReferenceTable.column(sleep, "drug_2")));
    assertEquals(-1.58, welch.differenceDb(), 1e-12);
    assertEquals(17.776473516178, welch.degreesOfFreedom(), 1e-10);
    assertEquals(-1.860813467487, welch.differenceDb() / welch.standardErrorDb(), 1e-11);
  }

  @Test
  void theIntervalOfABandIsWelchs() {
    List<Map<String, String>> sleep = ReferenceTable.rows("ttest_student_1908_sleep.csv");
    BandGrid one = BandGrid.covering(1000, 1100, 1);
    MeanDifference.Verdict v =
        MeanDifference.of(
                side(one, columns(ReferenceTable.column(sleep, "drug_1"))),
                side(one, columns(ReferenceTable.column(sleep, "drug_2"))),
                TERMS)
            .bands()
            .get(0)
            .orElseThrow();
    assertEquals(-3.365483230712, v.differenceDb() - v.halfDb(), 1e-9);
    assertEquals(0.205483230712, v.differenceDb() + v.halfDb(), 1e-9);
    // One band: all bands at once are this one.
    assertEquals(v.halfDb(), v.simultaneousHalfDb(), 1e-9);
    assertFalse(v.different());
    assertFalse(v.equivalent());
  }

  private static RandomEffects.Result plainMean(double[] values) {
    return new RandomEffects(0.95).fit(values, new double[values.length]);
  }

  /** metafor 3.8-1: rma(d, sei, method = "REML", test = "adhoc"); the script stands beside. */
  @Test
  void studiesAreCombinedAsByMetafor() {
    for (Map<String, String> row : ReferenceTable.rows("meta_combined.csv")) {
      double[] d = numbers(row.get("d"));
      double[] se = numbers(row.get("se_d"));
      List<RandomEffects.Result> means = new ArrayList<>();
      for (int j = 0; j < d.length; j++) {
        means.add(new RandomEffects.Result(d[j], se[j], 0, 10, 0.95, 0));
      }
      CombinedTransfer.Combined c = CombinedTransfer.combined(GRID.band(0), means, 0.95);
      String name = row.get("case");
      assertEquals(Double.parseDouble(row.get("mean")), c.meanDb(), 1e-8, name);
      assertEquals(Double.parseDouble(row.get("se")), c.standardErrorDb(), 1e-8, name);
      assertEquals(Double.parseDouble(row.get("tau2")), c.tauDb() * c.tauDb(), 1e-8, name);
      assertEquals(Double.parseDouble(row.get("half")), c.halfDb(), 1e-7, name);
      assertEquals(Double.parseDouble(row.get("further_half")), c.furtherHalfDb(), 1e-7, name);
      assertEquals(d.length, c.studies());
      assertEquals(10 * d.length, c.units());
    }
  }

  private static double[] numbers(String text) {
    return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  /** Two studies of one truth: curves that hang together over bands, unequal sizes and scatter. */
  @Test
  void studiesOfOneTruthAreSeldomFoundDifferent() {
    int tries = 200;
    int wrong = 0;
    for (int k = 0; k < tries; k++) {
      Random random = new Random(1000 + k);
      MeanDifference d =
          MeanDifference.of(
              side(GRID, curves(random, 8, 1.0)), side(GRID, curves(random, 13, 2.0)), TERMS);
      wrong += d.octaves(MeanDifference.Verdict::different) > 0 ? 1 : 0;
    }
    // 5 % of 200 is 10; three standard errors of a binomial count are 9.
    assertTrue(wrong <= 19, wrong + " of " + tries + " pairs were called different");
    assertTrue(wrong >= 1, wrong + " of " + tries + ": the interval is far too wide");
  }

  /** A study shifted by 1 dB over an octave, scatter 0.5 dB, 12 units each: t is about 4.9. */
  @Test
  void aPlantedShiftIsFoundWhereItIs() {
    int tries = 20;
    int found = 0;
    int elsewhere = 0;
    for (int k = 0; k < tries; k++) {
      Random random = new Random(7000 + k);
      double[][] moved = curves(random, 12, 0.5);
      for (double[] unit : moved) {
        for (int b = 0; b < unit.length; b++) {
          double hz = GRID.band(b).midHz();
          unit[b] += hz > 2000 && hz < 4000 ? 1 : 0;
        }
      }
      MeanDifference d =
          MeanDifference.of(side(GRID, moved), side(GRID, curves(random, 12, 0.5)), TERMS);
      found += d.octaves(v -> v.different() && inside(v)) > 0 ? 1 : 0;
      elsewhere += d.octaves(v -> v.different() && !inside(v)) > 0 ? 1 : 0;
      assertEquals(0, d.octaves(v -> v.equivalent() && inside(v)), "1 dB is not 0.5 dB");
    }
    assertTrue(found >= 18, "found in " + found + " of " + tries);
    assertTrue(elsewhere <= 4, "elsewhere in " + elsewhere + " of " + tries);
  }

  private static boolean inside(MeanDifference.Verdict v) {
    return v.band().midHz() > 2000 && v.band().midHz() < 4000;
  }

  /** A difference just at the limit must not be called equivalent more often than α allows. */
  @Test
  void studiesThatDifferByTheLimitAreSeldomCalledEquivalent() {
    int tries = 100;
    int wrong = 0;
    for (int k = 0; k < tries; k++) {
      Random random = new Random(9000 + k);
      double[][] moved = curves(random, 20, 0.3);
      for (double[] unit : moved) {
        for (int b = 0; b < unit.length; b++) {
          unit[b] += TERMS.limitDb();
        }
      }
      MeanDifference d =
          MeanDifference.of(side(GRID, moved), side(GRID, curves(random, 20, 0.3)), TERMS);
      wrong += d.octaves(MeanDifference.Verdict::equivalent) > 0 ? 1 : 0;
    }
    // 5 % of 100 is 5; three standard errors are 7.
    assertTrue(wrong <= 12, wrong + " of " + tries);
  }

  @Test
  void runsAndTheLargestDifferenceAreTold() {
    double[][] first = {{1, 1, 0}, {1.01, 1.01, 0.01}, {0.99, 0.99, -0.01}, {1, 1.02, 0}};
    double[][] second = {{0, 0, 0}, {0.01, 0.01, 0.01}, {-0.01, -0.01, -0.01}, {0, 0.02, 0}};
    BandGrid three = BandGrid.covering(1000, 4000, 1);
    MeanDifference d = MeanDifference.of(side(three, first), side(three, second), TERMS);
    assertEquals(1, d.runs(MeanDifference.Verdict::different).size());
    assertEquals(
        three.band(0).lowerHz(), d.runs(MeanDifference.Verdict::different).get(0).fromHz());
    assertEquals(three.band(1).upperHz(), d.runs(MeanDifference.Verdict::different).get(0).toHz());
    assertEquals(2, d.octaves(MeanDifference.Verdict::different), 0.01);
    assertEquals(1, d.runs(MeanDifference.Verdict::equivalent).size());
    assertEquals(1.0, d.largest().orElseThrow().differenceDb(), 0.02);
  }

  @Test
  void onlyLikeIsComparedWithLike() {
    KindEstimate here = side(GRID, curves(new Random(1), 4, 1));
    BandGrid other = BandGrid.covering(100, 10_000, 3);
    double[][] few = new double[4][other.size()];
    few[0][0] = 1;
    assertThrows(
        IllegalArgumentException.class, () -> MeanDifference.of(here, side(other, few), TERMS));
    assertThrows(IllegalArgumentException.class, () -> CombinedTransfer.of(List.of(here), 0.95));
    CombinedTransfer both = CombinedTransfer.of(List.of(here, here), 0.95);
    assertEquals(GRID.size(), both.bands().size());
  }

  /** Normal curves whose neighbouring bands correlate by 0.9. */
  private static double[][] curves(Random random, int units, double deviationDb) {
    double[][] curves = new double[units][GRID.size()];
    for (double[] curve : curves) {
      double last = random.nextGaussian();
      for (int b = 0; b < curve.length; b++) {
        last = b == 0 ? last : 0.9 * last + Math.sqrt(1 - 0.81) * random.nextGaussian();
        curve[b] = deviationDb * last;
      }
    }
    return curves;
  }

  private static double[][] columns(double[] values) {
    return Arrays.stream(values).mapToObj(v -> new double[] {v}).toArray(double[][]::new);
  }

  /** Units whose old levels are 0 and whose new ones are given, one seating each. */
  private static KindEstimate side(BandGrid grid, double[][] differences) {
    List<String> names = new ArrayList<>();
    List<Levels> old = new ArrayList<>();
    List<Levels> now = new ArrayList<>();
    List<List<Integer>> seatings = new ArrayList<>();
    for (int i = 0; i < differences.length; i++) {
      names.add("Rowan " + (i + 1));
      old.add(Levels.copyOf(grid, new double[grid.size()]));
      now.add(Levels.copyOf(grid, differences[i]));
      seatings.add(java.util.Collections.nCopies(grid.size(), 1));
    }
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    Levels none = Levels.copyOf(grid, unknown);
    PairedUnits paired =
        new PairedUnits(
            "in-ear",
            grid,
            names,
            new PairedUnits.OnFixture(old, seatings, none, old.stream().map(List::of).toList()),
            new PairedUnits.OnFixture(now, seatings, none, now.stream().map(List::of).toList()));
    return new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
  }
}
