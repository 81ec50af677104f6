package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.regression.KindEstimate;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Settings;

class MarkStabilityTest {
  private static final BandGrid OCTAVES = BandGrid.covering(250, 4000, 1);

  /** R 4.2.2: qt(0.975, 2). */
  private static final double T2 = 4.30265272974946;

  /** Three units, five octaves: differences whose resampled half-widths fall on all three marks. */
  private static final double[][] THREE = {
    {0.0, 0.4, -0.3, 0.9, 0.02},
    {0.1, -0.5, 0.35, -1.2, 0.00},
    {0.3, 0.2, 0.60, 0.1, -0.03}
  };

  @Test
  void everyResampleOfThreeUnitsIsJudgedAsByHand() {
    for (int draws : new int[] {2, 3}) {
      double[][] all = everyResample(3, draws);
      MarkStability.Result found =
          new MarkStability(0.95, 1)
              .over(
                  new Resamples(all),
                  RedrawnKind.estimate(OCTAVES, THREE),
                  RedrawnKind.rule(RedrawnKind.settings(OCTAVES, 3, List.of()), List.of()),
                  List.of());
      for (int b = 0; b < OCTAVES.size(); b++) {
        double[] shares = byHand(all, b);
        MarkStability.Shares s = found.bands().get(b).orElseThrow();
        assertEquals(shares[0], s.reliable(), 1e-12);
        assertEquals(shares[1], s.caution(), 1e-12);
        assertEquals(shares[2], s.unreliable(), 1e-12);
      }
    }
  }

  /** The drawn shares lie within four binomial standard errors of those over all nine resamples. */
  @Test
  void drawnResamplesComeNearToAllOfThem() {
    double[][] all = everyResample(3, 2);
    MarkStability.Result found =
        new MarkStability(0.95, 1)
            .of(
                RedrawnKind.estimate(OCTAVES, THREE),
                RedrawnKind.rule(RedrawnKind.settings(OCTAVES, 3, List.of()), List.of()),
                List.of());
    assertEquals(999, found.resamples());
    int uncertain = 0;
    for (int b = 0; b < OCTAVES.size(); b++) {
      double share = byHand(all, b)[1];
      double error = Math.sqrt(share * (1 - share) / 999);
      assertEquals(share, found.bands().get(b).orElseThrow().caution(), 4 * error + 1e-12);
      uncertain += share > 0 && share < 1 ? 1 : 0;
    }
    assertTrue(uncertain >= 2, "the differences must leave something to chance");
  }

  /** Shares of the three marks, from the formulas of the class comment and nothing of ours. */
  private static double[] byHand(double[][] resamples, int band) {
    double mean = (THREE[0][band] + THREE[1][band] + THREE[2][band]) / 3;
    double[] shares = new double[3];
    for (double[] counts : resamples) {
      double squares = 0;
      double total = 0;
      for (int i = 0; i < 3; i++) {
        double error = (THREE[i][band] - mean) * 3 / 2;
        squares += counts[i] * error * error;
        total += counts[i];
      }
      double half = T2 * Math.sqrt(squares / total);
      shares[half <= 1.5 ? 0 : half <= 3 ? 1 : 2] += 1.0 / resamples.length;
    }
    return shares;
  }

  /** Every ordered draw with replacement, as counts. */
  private static double[][] everyResample(int units, int draws) {
    List<double[]> all = new ArrayList<>();
    for (int code = 0; code < Math.pow(units, draws); code++) {
      double[] counts = new double[units];
      for (int k = 0, rest = code; k < draws; k++, rest /= units) {
        counts[rest % units]++;
      }
      all.add(counts);
    }
    return all.toArray(double[][]::new);
  }

  /**
   * The variance of a mean over drawn units is the unbiased one; numpy 2.4.6: {@code np.var([0.3,
   * 1.9, 0.7, 4.1, 0.2], ddof=1)/5} is 0.5336. Five draws would give 0.427.
   */
  @Test
  void resampledMeansScatterAsTheUnbiasedVarianceSays() {
    double[] squares = {0.3, 1.9, 0.7, 4.1, 0.2};
    double sum = 0;
    double sumOfSquares = 0;
    Resamples drawn = Resamples.drawn(5, 20_000, 1);
    for (double[] counts : drawn.counts()) {
      assertEquals(4, Arrays.stream(counts).sum());
      double mean = 0;
      for (int i = 0; i < 5; i++) {
        mean += counts[i] * squares[i] / 4;
      }
      sum += mean / drawn.size();
      sumOfSquares += mean * mean / drawn.size();
    }
    assertEquals(1.44, sum, 0.02);
    assertEquals(0.5336, sumOfSquares - sum * sum, 0.02);
  }

  @Test
  void equalErrorsKeepEveryMarkAndEdge() {
    BandGrid grid = BandGrid.covering(200, 5000, 12);
    KindEstimate estimate = RedrawnKind.estimate(grid, alike(grid, 8));
    MarkStability.Result found = found(estimate, RedrawnKind.settings(grid, 5, List.of()));
    for (Optional<MarkStability.Shares> band : found.bands()) {
      assertEquals(1, band.orElseThrow().kept());
    }
    assertEquals(2, found.edges().size());
    for (ZoneEdge edge : found.edges()) {
      assertEquals(1, edge.kept());
    }
  }

  /** Units depart from the mean by one amount, half of them up and half down; wider upwards. */
  private static double[][] alike(BandGrid grid, int units) {
    double[][] differences = new double[units][grid.size()];
    for (int i = 0; i < units; i++) {
      for (int b = 0; b < grid.size(); b++) {
        differences[i][b] = (i % 2 == 0 ? 1 : -1) * 2.0 * b / grid.size();
      }
    }
    return differences;
  }

  @Test
  void whatNoUnitCanChangeIsHeld() {
    double[][] wild = {{0, 1, -9, 0, 0}, {0, -7, 3, 0, 0}, {0, 5, 3, 0, 0}};
    MarkStability.Result few =
        found(RedrawnKind.estimate(OCTAVES, wild), RedrawnKind.settings(OCTAVES, 5, List.of()));
    for (Optional<MarkStability.Shares> band : few.bands()) {
      assertEquals(1, band.orElseThrow().unreliable(), "too few units is no matter of chance");
    }
    List<DeclaredZone> zones = List.of(new DeclaredZone("leak", "head", 200, 300));
    MarkStability.Result capped =
        found(RedrawnKind.estimate(OCTAVES, wild), RedrawnKind.settings(OCTAVES, 3, zones));
    assertEquals(1, capped.bands().get(0).orElseThrow().caution());
    assertEquals(1, capped.bands().get(3).orElseThrow().reliable());
  }

  @Test
  void missingErrorsCountOnlyWhereTheyAre() {
    double none = Double.NaN;
    double[][] gaps = {
      {0.2, none, 0.1, 0, 0},
      {-0.2, none, -0.1, 0, 0},
      {0.2, none, 0.1, 0, 0},
      {none, none, 0.1, 0, 0},
    };
    KindEstimate estimate = RedrawnKind.estimate(OCTAVES, gaps);
    MarkStability.Result found =
        new MarkStability(0.95, 1)
            .over(
                new Resamples(new double[][] {{1, 0, 0, 2}, {0, 0, 0, 3}}),
                estimate,
                RedrawnKind.rule(RedrawnKind.settings(OCTAVES, 3, List.of()), List.of()),
                List.of());
    // Errors of 0.2, -0.4 and 0.2 dB, half 4.303·√0.08 = 1.22 dB; the first resample has 0.86 dB,
    // the second drew no unit of the band.
    assertEquals(
        Optional.of(new MarkStability.Shares(Mark.RELIABLE, 0.5, 0, 0.5)), found.bands().get(0));
    assertEquals(Optional.empty(), found.bands().get(1), "no data, no mark to keep");
  }

  @Test
  void aWanderingResonanceIsFoundAnewFromTheUnitsDrawn() {
    double[] shifts = {0.0, 0.08, -0.08, 0.16};
    List<ResonanceWander.Position> positions = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      positions.add(
          new ResonanceWander.Position(
              "Alder " + i,
              new Resonance(2000, 6, 0.2),
              new Resonance(2000 * Math.pow(2, shifts[i]), 6, 0.2)));
    }
    ResonanceWander wander =
        new ResonanceWander(
            Resonance.Shape.NOTCH,
            positions,
            0.085,
            0.3,
            0.18,
            0.1,
            0.7,
            Optional.of(new FrequencyRange(1700, 2600)),
            new FrequencyRange(1000, 3000));
    double[][] all = everyResample(4, 3);
    MarkStability.Result found =
        new MarkStability(0.95, 1)
            .over(
                new Resamples(all),
                RedrawnKind.estimate(OCTAVES, new double[4][5]),
                RedrawnKind.rule(
                    RedrawnKind.settings(OCTAVES, 3, List.of()),
                    List.of(wander.zone().orElseThrow())),
                List.of(wander));
    double wandering = 0;
    for (double[] counts : all) {
      wandering += sd(shifts, counts) > 1.0 / 12 ? 1.0 / all.length : 0;
    }
    assertTrue(wandering > 0.3 && wandering < 0.9, "some resamples wander, some do not");
    MarkStability.Shares twoKilohertz = found.bands().get(3).orElseThrow();
    assertEquals(Mark.CAUTION, twoKilohertz.mark());
    assertEquals(wandering, twoKilohertz.caution(), 1e-12);
    assertEquals(1, found.bands().get(0).orElseThrow().reliable());
  }

  /** The resample's standard deviation, its variance times 4/3 to be right on average. */
  private static double sd(double[] values, double[] counts) {
    double mean = 0;
    for (int i = 0; i < 4; i++) {
      mean += counts[i] * values[i] / 3;
    }
    double squares = 0;
    for (int i = 0; i < 4; i++) {
      squares += counts[i] * Math.pow(values[i] - mean, 2);
    }
    return Math.sqrt(squares / 2 * 4 / 3);
  }

  @Test
  void aPositionOfAnUnknownUnitIsRefused() {
    Resonance at = new Resonance(2000, 6, 0.2);
    ResonanceWander wander =
        new ResonanceWander(
            Resonance.Shape.PEAK,
            List.of(new ResonanceWander.Position("Rowan 1", at, at)),
            0,
            0,
            0,
            0,
            0,
            Optional.empty(),
            new FrequencyRange(1000, 3000));
    KindEstimate estimate = RedrawnKind.estimate(OCTAVES, THREE);
    MarkRule rule = RedrawnKind.rule(RedrawnKind.settings(OCTAVES, 3, List.of()), List.of());
    assertThrows(
        IllegalArgumentException.class,
        () -> new MarkStability(0.95, 1).of(estimate, rule, List.of(wander)));
  }

  @Property(tries = 40)
  void sharesSumToOneAndIntervalsHoldTheStudysEdges(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 12) int units) {
    BandGrid grid = BandGrid.covering(200, 8000, 12);
    KindEstimate estimate = RedrawnKind.estimate(grid, smoothDraws(grid, units, seed));
    MarkRule rule = RedrawnKind.rule(RedrawnKind.settings(grid, 5, List.of()), List.of());
    MarkStability stability = new MarkStability(0.95, seed);
    MarkStability.Result found = stability.of(estimate, rule, List.of());
    List<MarkedBand> marked = rule.mark(estimate.bands());
    for (int b = 0; b < grid.size(); b++) {
      MarkStability.Shares s = found.bands().get(b).orElseThrow();
      assertEquals(1, s.reliable() + s.caution() + s.unreliable(), 1e-12);
      assertEquals(marked.get(b).mark(), s.mark());
      Map<Mark, Double> own =
          Map.of(
              Mark.RELIABLE,
              s.reliable(),
              Mark.CAUTION,
              s.caution(),
              Mark.UNRELIABLE,
              s.unreliable());
      assertEquals(own.get(s.mark()), s.kept());
    }
    List<Zone> zones = Zone.of(marked);
    assertEquals(zones.size() - 1, found.edges().size());
    for (int z = 1; z < zones.size(); z++) {
      ZoneEdge edge = found.edges().get(z - 1);
      assertEquals(zones.get(z).fromHz(), edge.edgeHz());
      assertEquals(zones.get(z - 1).mark(), edge.below());
      assertEquals(zones.get(z).mark(), edge.above());
    }
    assertEquals(found, stability.of(estimate, rule, List.of()), "the same seed, the same result");
  }

  /**
   * Half-widths of three units are {@code t·√(mean of s² over the bands within 1/6 octave)}, {@code
   * s² = 1.5²·mean(d²)} for differences that sum to 0. Drawn alone, the first unit errs more at the
   * sixth band than all do, and not at all at the seventh, so that marks are RRRCRCCC where the
   * study has RRRRCCCC: the single R joins the bands about it, and the edge moves down by one band.
   */
  @Test
  void narrowRunsOfAResampleAreJoinedBeforeEdgesAreLookedFor() {
    BandGrid grid = new BandGrid(BandGrid.covering(200, 5000, 12).bands().subList(0, 8));
    double[][] differences = {
      {0.22, 0.22, 0.22, 0.22, 0.22, 0.31, 0, 0.4},
      {0.08, 0.08, 0.08, 0.08, 0.08, -0.155, 0.4, 0.15},
      {-0.3, -0.3, -0.3, -0.3, -0.3, -0.155, -0.4, -0.55}
    };
    MarkStability.Result found =
        new MarkStability(0.95, 1)
            .over(
                new Resamples(new double[][] {{2, 0, 0}}),
                RedrawnKind.estimate(grid, differences),
                RedrawnKind.rule(RedrawnKind.settings(grid, 3, List.of()), List.of()),
                List.of());
    assertEquals(1, found.bands().get(3).orElseThrow().caution());
    assertEquals(1, found.bands().get(4).orElseThrow().reliable());
    assertEquals(1, found.edges().size());
    assertEquals(grid.band(4).lowerHz(), found.edges().get(0).edgeHz());
    assertEquals(1, found.edges().get(0).kept());
  }

  /** Errors of one size keep their half-width, 3.182·0.3·4/3 dB, however many of them are drawn. */
  @Test
  void everyBandCountsItsOwnUnits() {
    double[][] differences = {
      {0, 0.3, 0, 0, 0}, {0, -0.3, 0, 0, 0}, {0, -0.3, 0, 0, 0}, {Double.NaN, 0.3, 0, 0, 0}
    };
    MarkStability.Result found =
        new MarkStability(0.95, 1)
            .over(
                new Resamples(new double[][] {{1, 0, 0, 2}}),
                RedrawnKind.estimate(OCTAVES, differences),
                RedrawnKind.rule(RedrawnKind.settings(OCTAVES, 3, List.of()), List.of()),
                List.of());
    assertEquals(1, found.bands().get(1).orElseThrow().reliable());
  }

  /** Differences that change slowly over frequency and scatter more at high ones. */
  private static double[][] smoothDraws(BandGrid grid, int units, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] differences = new double[units][grid.size()];
    for (double[] row : differences) {
      double level = random.nextDouble() - 0.5;
      double slope = random.nextDouble() - 0.5;
      for (int b = 0; b < row.length; b++) {
        row[b] = level + 4 * slope * b / row.length + 0.3 * Math.sin(b * level);
      }
    }
    return differences;
  }

  private static MarkStability.Result found(KindEstimate estimate, Settings settings) {
    return new MarkStability(0.95, 1)
        .of(estimate, RedrawnKind.rule(settings, List.of()), List.of());
  }
}
