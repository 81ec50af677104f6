package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.PairedUnits;

class RankKeepingTest {
  private static final BandGrid GRID = BandGrid.covering(125, 8000, 1);
  private static final FrequencyRange RANGE = new FrequencyRange(200, 5000);

  /** rank_intervals.R beside the values: cor.test of R 4.2.2, with and without ties. */
  @Test
  void coefficientsAndIntervalsAgreeWithR() {
    for (Map<String, String> row : ReferenceTable.rows("rank_intervals.csv")) {
      List<Map<String, String>> table = ReferenceTable.rows(row.get("table"));
      boolean ties = row.get("table").contains("ties");
      double[] x = ReferenceTable.column(table, ties ? "deviation_a_db" : "lightness");
      double[] y = ReferenceTable.column(table, ties ? "deviation_b_db" : "panel_score");
      RankCorrelation found =
          RankCorrelation.of(RankCorrelation.Measure.valueOf(row.get("measure")), x, y, 0.95)
              .orElseThrow();
      assertEquals(Integer.parseInt(row.get("n")), found.units());
      assertEquals(Double.parseDouble(row.get("r")), found.coefficient(), 1e-13);
      RankCorrelation.Interval interval = found.interval().orElseThrow();
      assertEquals(Double.parseDouble(row.get("low")), interval.low(), 1e-12, row::toString);
      assertEquals(Double.parseDouble(row.get("high")), interval.high(), 1e-12, row::toString);
    }
  }

  /** Hollander and Wolfe 1973, p. 185: 26 of 36 pairs of lots of tuna are in the same order. */
  @Test
  void agreesWithAPublishedExample() {
    List<Map<String, String>> table = ReferenceTable.rows("rank_correlation_tuna.csv");
    RankCorrelation tau =
        RankCorrelation.of(
                RankCorrelation.Measure.KENDALL,
                ReferenceTable.column(table, "lightness"),
                ReferenceTable.column(table, "panel_score"),
                0.95)
            .orElseThrow();
    assertEquals((26.0 - 10) / 36, tau.coefficient(), 1e-15);
  }

  @Test
  void theSameOrderHasNoInterval() {
    double[] x = {1, 2, 3, 4, 5, 6};
    double[] y = {1, 4, 9, 16, 25, 36};
    for (RankCorrelation.Measure measure : RankCorrelation.Measure.values()) {
      RankCorrelation found = RankCorrelation.of(measure, x, y, 0.95).orElseThrow();
      assertEquals(1, found.coefficient(), 1e-15);
      assertEquals(Optional.empty(), found.interval());
    }
  }

  @Test
  void whatDoesNotVaryHasNoOrder() {
    double[] same = {2, 2, 2};
    double[] other = {1, 2, 3};
    for (RankCorrelation.Measure measure : RankCorrelation.Measure.values()) {
      assertEquals(Optional.empty(), RankCorrelation.of(measure, same, other, 0.95));
      assertEquals(Optional.empty(), RankCorrelation.of(measure, other, same, 0.95));
      assertEquals(
          Optional.empty(), RankCorrelation.of(measure, new double[1], new double[1], 0.95));
    }
    assertThrows(
        IllegalArgumentException.class,
        () -> RankCorrelation.of(RankCorrelation.Measure.SPEARMAN, same, new double[2], 0.95));
  }

  /** Spearman's variance needs 4 units, Kendall's 5. */
  @Test
  void intervalsNeedUnits() {
    double[] x = {1, 2, 3, 4};
    double[] y = {1, 3, 2, 4};
    assertTrue(
        RankCorrelation.of(RankCorrelation.Measure.SPEARMAN, x, y, 0.95)
            .orElseThrow()
            .interval()
            .isPresent());
    assertTrue(
        RankCorrelation.of(RankCorrelation.Measure.KENDALL, x, y, 0.95)
            .orElseThrow()
            .interval()
            .isEmpty());
  }

  /** Every unit lies as far above its reference curve, at all bands, as its number says. */
  private static PairedUnits kind(double[] aboveOld, double[] aboveNew) {
    List<String> names = List.of("Alder 1", "Oak 2", "Elm 3", "Fir 4", "Yew 5");
    return new PairedUnits(
        "in-ear",
        GRID,
        names.subList(0, aboveOld.length),
        onFixture(aboveOld, 3),
        onFixture(aboveNew, -1));
  }

  private static PairedUnits.OnFixture onFixture(double[] above, double referenceDb) {
    List<Levels> means =
        Arrays.stream(above)
            .mapToObj(
                db -> {
                  double[] levels = new double[GRID.size()];
                  Arrays.setAll(levels, b -> referenceDb + (b % 2 == 0 ? db : -db));
                  return Levels.copyOf(GRID, levels);
                })
            .toList();
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(above.length, Collections.nCopies(GRID.size(), 1)),
        Levels.copyOf(GRID, new double[GRID.size()]),
        means.stream().map(List::of).toList());
  }

  private static Levels flat(double db) {
    double[] levels = new double[GRID.size()];
    Arrays.fill(levels, db);
    return Levels.copyOf(GRID, levels);
  }

  private static RankKeeping.References references() {
    return new RankKeeping.References(flat(3), flat(-1), RANGE);
  }

  @Test
  void unitsAreRankedByTheirDeviationOnEitherFixture() {
    RankKeeping.Result found =
        new RankKeeping(0.95)
            .of(kind(new double[] {1, 2, 3, 4, 5}, new double[] {1.5, 6, 3, 4, 3}), references());
    assertEquals(5, found.bands());
    RankKeeping.Ranked oak = found.units().get(1);
    assertEquals("Oak 2", oak.unit());
    assertEquals(2, oak.fromDb(), 1e-12);
    assertEquals(6, oak.toDb(), 1e-12);
    assertEquals(2, oak.rankFrom());
    assertEquals(5, oak.rankTo());
    assertEquals(3, oak.change());
    assertEquals(2.5, found.units().get(4).rankTo());
    assertEquals(
        List.of("Oak 2", "Yew 5"),
        found.mostChanged(2).stream().map(RankKeeping.Ranked::unit).toList());
  }

  @Test
  void aUnitThatLacksABandIsNamedAndTakesNoPart() {
    PairedUnits whole = kind(new double[] {1, 2, 3}, new double[] {1, 3, 2});
    double[] gap = new double[GRID.size()];
    gap[3] = Double.NaN;
    PairedUnits.OnFixture to =
        new PairedUnits.OnFixture(
            List.of(whole.to().means().get(0), Levels.copyOf(GRID, gap), whole.to().means().get(2)),
            whole.to().seatings(),
            whole.to().seatingVariance(),
            whole.to().curves());
    RankKeeping.Result found =
        new RankKeeping(0.95)
            .of(new PairedUnits("in-ear", GRID, whole.units(), whole.from(), to), references());
    assertEquals(List.of("Oak 2"), found.leftOut());
    assertEquals(
        List.of("Alder 1", "Elm 3"), found.units().stream().map(RankKeeping.Ranked::unit).toList());
  }

  @Test
  void referenceCurvesArePinnedLikeCaptures() {
    Response old = Dense.curve(new double[] {50, 20_000}, new double[] {70, 70});
    Response now = Dense.curve(new double[] {50, 20_000}, new double[] {94, 94});
    RankKeeping.References pinned =
        RankKeeping.References.pinned(old, now, new Anchor.Range(300, 1000), GRID, RANGE)
            .orElseThrow();
    for (int b = 0; b < GRID.size(); b++) {
      assertEquals(0, pinned.from().db(b), 1e-9);
      assertEquals(0, pinned.to().db(b), 1e-9);
    }
    Response narrow = Dense.curve(new double[] {2000, 20_000}, new double[] {70, 70});
    assertEquals(
        Optional.empty(),
        RankKeeping.References.pinned(narrow, now, new Anchor.Range(300, 1000), GRID, RANGE));
  }

  @Test
  void aRangeWithoutABandIsRefused() {
    RankKeeping.References nowhere =
        new RankKeeping.References(flat(0), flat(0), new FrequencyRange(9, 10));
    PairedUnits kind = kind(new double[] {1, 2}, new double[] {1, 2});
    assertThrows(IllegalArgumentException.class, () -> new RankKeeping(0.95).of(kind, nowhere));
  }
}
