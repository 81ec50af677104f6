package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;

class StudyUnitsTest {
  /** Ten bands of 1/6 octave: the variances of a band and of one to either side are averaged. */
  private static final BandGrid TEN = BandGrid.covering(1000, 3000, 6);

  private static final Intervals INTERVALS = new Intervals(0.95, TEN.size());

  /** R 4.2.2: qt(0.995, 2). */
  private static final double T2 = 9.92484320091829;

  private static final double[] MEANS = {3, -1, 0, 2, 5, 4, -2, -6, 1, 0};
  private static final double[] SDS = {1, 1, 1, 1, 2, 1, 1, 1, 1, 1};

  /** A kind from the levels of its units on the old fixture; their differences are 0, 1, 2 dB … */
  private static TransferFunction kind(BandGrid grid, List<double[]> levelsDb) {
    List<Levels> from = levelsDb.stream().map(db -> Levels.copyOf(grid, db)).toList();
    List<Levels> to =
        IntStream.range(0, from.size()).mapToObj(u -> from.get(u).map(db -> db + u)).toList();
    List<String> units = IntStream.range(0, from.size()).mapToObj(u -> "Alder " + u).toList();
    KindEstimate estimate =
        new TransferEstimator(0.95, PredictionModel.OFFSET, 1)
            .fit(
                new PairedUnits("in-ear", grid, units, onFixture(grid, from), onFixture(grid, to)));
    List<MarkedBand> bands =
        estimate.bands().stream().map(b -> new MarkedBand(b, Mark.RELIABLE, List.of())).toList();
    return new TransferFunction("in-ear", units, grid, bands);
  }

  private static PairedUnits.OnFixture onFixture(BandGrid grid, List<Levels> means) {
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(means.size(), Collections.nCopies(grid.size(), 1)),
        Levels.copyOf(grid, unknown),
        means.stream().map(List::of).toList());
  }

  /** Three units one standard deviation apart. */
  private static TransferFunction three(double... sds) {
    return kind(
        TEN,
        IntStream.rangeClosed(-1, 1)
            .mapToObj(u -> IntStream.range(0, 10).mapToDouble(b -> MEANS[b] + u * sds[b]).toArray())
            .toList());
  }

  /** The means with so much more at the bands from one on, up to another. */
  private static OldGraph above(double db, int from, int to) {
    double[] graph = MEANS.clone();
    for (int b = from; b < to; b++) {
      graph[b] += db;
    }
    return OldGraph.pinned(Levels.copyOf(TEN, graph));
  }

  /**
   * Limits {@code t₂·√(s²(1 + 1/3))}: {@code s²} is 1 but (1 + 4 + 1)/3 = 2 at bands 3 to 5, so
   * 11.460 dB and 16.207 dB.
   */
  @Test
  void bandsBeyondAreThoseOfAHandCalculation() {
    assertEquals(10, TEN.size());
    TransferFunction kind = three(SDS);
    double one = T2 * Math.sqrt(4.0 / 3);
    double two = T2 * Math.sqrt(8.0 / 3);
    assertEquals(11.460, one, 5e-4);
    assertEquals(16.207, two, 5e-4);
    for (int sign : new int[] {-1, 1}) {
      assertEquals(
          0, StudyUnits.beyond(above(sign * (one - 1e-6), 0, 10), kind, INTERVALS, b -> 0));
      assertEquals(
          0.7, StudyUnits.beyond(above(sign * (one + 1e-6), 0, 10), kind, INTERVALS, b -> 0));
      assertEquals(
          0.7, StudyUnits.beyond(above(sign * (two - 1e-6), 0, 10), kind, INTERVALS, b -> 0));
      assertEquals(
          1, StudyUnits.beyond(above(sign * (two + 1e-6), 0, 10), kind, INTERVALS, b -> 0));
    }
  }

  /** What an earlier link left uncertain, 3 dB here, counts as well: {@code √(4/3 + 9)·t₂}. */
  @Test
  void whatAGraphCarriesWidensTheLimit() {
    double limit = T2 * Math.sqrt(4.0 / 3 + 9);
    OldGraph.Carried carried =
        new OldGraph.Carried(new Uncertainty(3, 5), new Uncertainty(7, 5), List.of());
    for (double db : new double[] {limit - 1e-6, limit + 1e-6}) {
      Levels levels = above(db, 0, 3).levels();
      OldGraph graph =
          new OldGraph(levels, Optional.of(levels), Optional.of(Collections.nCopies(10, carried)));
      double expected = db < limit ? 0 : 0.3;
      assertEquals(expected, StudyUnits.beyond(graph, three(SDS), INTERVALS, b -> 0));
    }
  }

  @Test
  void moreThanATenthOfTheBandsIsUnlikeTheUnits() {
    TransferFunction kind = three(SDS);
    assertFalse(StudyUnits.unlike(above(12, 0, 1), kind, INTERVALS, b -> 0));
    assertTrue(StudyUnits.unlike(above(12, 0, 2), kind, INTERVALS, b -> 0));
  }

  /** One of nine bands is more than a tenth. */
  @Test
  void bandsThatTheGraphLacksDoNotCount() {
    double[] graph = MEANS.clone();
    graph[0] += 12;
    graph[9] = Double.NaN;
    assertTrue(
        StudyUnits.unlike(
            OldGraph.pinned(Levels.copyOf(TEN, graph)), three(SDS), INTERVALS, b -> 0));
  }

  @Test
  void unitsThatDoNotDifferAndGraphsWithoutTheAnchorTellNothing() {
    double[] same = new double[10];
    Arrays.fill(same, 0.009);
    assertEquals(0, StudyUnits.beyond(above(50, 0, 10), three(same), INTERVALS, b -> 0));
    Levels far = above(50, 0, 10).levels();
    OldGraph unpinned = new OldGraph(far, Optional.empty(), Optional.empty());
    assertFalse(StudyUnits.unlike(unpinned, three(SDS), INTERVALS, b -> 0));
  }

  /** Units that differ by a smooth curve of their own. */
  private static List<double[]> units(BandGrid grid, int units, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return IntStream.range(0, units)
        .mapToObj(
            u -> {
              double tilt = random.nextDouble(-2, 2);
              return IntStream.range(0, grid.size())
                  .mapToDouble(b -> tilt * b / 6 + random.nextDouble(-1, 1))
                  .toArray();
            })
        .toList();
  }

  @Property(tries = 50)
  void theMeanOfTheUnitsIsNeverOutside(
      @ForAll long seed, @ForAll @IntRange(min = 3, max = 12) int units) {
    List<double[]> levels = units(TEN, units, seed);
    double[] mean =
        IntStream.range(0, TEN.size())
            .mapToDouble(b -> levels.stream().mapToDouble(u -> u[b]).average().orElseThrow())
            .toArray();
    OldGraph graph = OldGraph.pinned(Levels.copyOf(TEN, mean));
    assertEquals(0, StudyUnits.beyond(graph, kind(TEN, levels), INTERVALS, b -> 0));
  }

  /** A graph is pinned before it is held against the units, so its own level says nothing. */
  @Property(tries = 50)
  void aShiftOfTheWholeGraphChangesNothing(
      @ForAll long seed, @ForAll @DoubleRange(min = -200, max = 200) double shiftDb) {
    TransferFunction kind = kind(TEN, units(TEN, 5, seed));
    Translation translation =
        new Translation(
            new Translation.Origin("", "plate", "head", "", ""),
            new Anchor.Frequency(2000),
            TEN,
            0.95,
            Settings.defaults().tolerance(),
            5,
            Translation.Handling.plain(),
            List.of(kind),
            List.of());
    double[] hz =
        IntStream.rangeClosed(0, 40).mapToDouble(k -> 800 * Math.pow(2, k / 16.0)).toArray();
    SplittableRandom random = new SplittableRandom(seed);
    double[] db = random.doubles(hz.length, -30, 30).toArray();
    double[] shifted = Arrays.stream(db).map(level -> level + shiftDb).toArray();
    assertEquals(
        StudyUnits.beyond(
            OldGraph.of(Response.copyOf(hz, db), translation), kind, INTERVALS, b -> 0),
        StudyUnits.beyond(
            OldGraph.of(Response.copyOf(hz, shifted), translation), kind, INTERVALS, b -> 0));
  }
}
