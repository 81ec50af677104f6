package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.evidence.Region;
import org.twinrig.proof.Reexpressed.Judged;
import org.twinrig.proof.Reexpressed.Point;
import org.twinrig.proof.SituationProof.Row;
import org.twinrig.response.Levels;

/** Rows by hand, and the same rows from the same seed. */
class SituationProofTest {
  private static final SituationProof PROOF = new SituationProof(List.of(6), 1);

  /** Errors in the four regions, in this order, of an interval of ±2 dB. */
  private static List<Point> points(String kind, double... errorsDb) {
    List<Point> points = new ArrayList<>();
    for (Region region : Region.values()) {
      double errorDb = errorsDb[points.size()];
      points.add(new Point(kind, region, errorDb, 2 * errorDb, 2));
    }
    return points;
  }

  private static Judged graph(Optional<Boolean> whole, boolean outside, List<Point> points) {
    return new Judged(points, whole, outside, outside ? 1 : 3, 4, outside ? 0 : 2);
  }

  private static Row row(String situation, Optional<Boolean> whole) {
    return new Row(
        situation,
        "by hand",
        6,
        List.of(
            List.of(
                graph(whole, true, points("in-ear", 1, 3, 1, -2)),
                graph(whole, false, points("open over-ear", 1, 1, 1, 1))),
            List.of(
                graph(whole, false, points("in-ear", 1, -5, 1, 1)),
                graph(whole, false, points("open over-ear", 1, 1, 1, 1)))));
  }

  @Test
  void sharesAndErrorsAreCountedByHand() {
    Row row = row("ideal", Optional.empty());
    assertEquals(14.0 / 16, row.inside().value(), 1e-12);
    assertEquals("middle", row.leastRegion().name());
    assertEquals(0.5, row.leastRegion().inside().value(), 1e-12);
    assertEquals(0, row.leastRegion().inside().se(), 1e-12);
    assertEquals("in-ear middle", row.leastOfAKind().name());
    assertEquals(0, row.leastOfAKind().inside().value(), 1e-12);
    assertEquals(3, row.rms(Region.MIDDLE, false).value(), 1e-12); // (9 + 1 + 25 + 1) / 4
    assertEquals(6, row.rms(Region.MIDDLE, true).value(), 1e-12);
    assertEquals(3, row.largestFalseStepDb(), 1e-12);
    assertEquals(Optional.empty(), row.whole());
    List<String> cells = PROOF.table().cells(row);
    List<String> names = PROOF.table().columns().stream().map(c -> c.name()).toList();
    assertEquals("0.250000", cells.get(names.indexOf("outside_the_study")));
    assertEquals("0.250000", cells.get(names.indexOf("outside_the_study_mc_se")));
    assertEquals("0.500000", cells.get(names.indexOf("graphs_inside_at_every_band")));
    assertEquals("", cells.get(names.indexOf("graphs_inside_whole")));
    assertEquals("2.500000", cells.get(names.indexOf("false_step_db")));
    assertEquals("1.500000", cells.get(names.indexOf("largest_step_db")));
    assertEquals("4", cells.get(names.indexOf("new_graphs")));
    Row whole = row("ideal", Optional.of(true));
    assertEquals("1.000000", PROOF.table().cells(whole).get(names.indexOf("graphs_inside_whole")));
  }

  @Test
  void onlyTheIdealIsPromised() {
    assertEquals(
        List.of(
            "87.5 ± 0.0 % inside, but at least 93 % is promised",
            "middle: 50.0 ± 0.0 % inside, but at least 90 % is promised"),
        PROOF.broken(row("ideal", Optional.empty())));
    assertEquals(List.of(), PROOF.broken(row("heavy tails", Optional.empty())));
  }

  /** A step is false as far as it goes beyond what lies between the old graph's and the truth's. */
  @Test
  void aFalseStepIsOneThatNeitherHas() {
    BandGrid grid = BandGrid.covering(1000, 2000, 6);
    assertEquals(6, grid.size());
    Levels truth = Levels.copyOf(grid, new double[] {0, 1, 1, 1, 1, 1});
    double[] old = {0, 0, 0, 0, 0, 4};
    double[] made = {0, 0.5, 0.5, 2, 1, 4};
    // Steps 0.5, 0, 1.5, -1, 3; between (0, 1), (0, 0), (0, 0), (0, 0), (4, 0).
    assertEquals(1.5, Reexpressed.falseStepDb(made, old, truth), 1e-12);
    assertEquals(0, Reexpressed.falseStepDb(old, old, truth), 1e-12);
    double[] down = {0, 0, -2.5, -2.5, -2.5, 1.5};
    assertEquals(2.5, Reexpressed.falseStepDb(down, old, truth), 1e-12);
  }

  /** On one simulator, few units: it takes seconds. */
  @Test
  void theSameSeedGivesTheSameRowsOnAnyNumberOfThreads() {
    Harness one = Small.harness(2, 7, 1);
    Harness two = Small.harness(2, 7, 2);
    List<Row> rows = PROOF.rows(one, new CurveLab(7), 6);
    assertEquals(PROOF.table().csv(rows), PROOF.table().csv(PROOF.rows(two, new CurveLab(7), 6)));
    assertEquals(Happening.ALL.size(), rows.size());
    for (Row row : rows) {
      assertTrue(row.inside().value() > 0.2 && row.inside().value() <= 1, row::situation);
      int graphs = row.studies().get(0).size();
      assertEquals(
          switch (row.situation()) {
            case "two sorts in a kind", "one unit mislabelled", "leaky among sealed" -> 2;
            default -> 3;
          },
          graphs,
          row::situation);
    }
  }
}
