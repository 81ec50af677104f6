package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

class EquivalenceTest {
  /** Units with one seating each: old level, then new level, {@code [unit][band]}. */
  private static PairedUnits kind(BandGrid grid, double[][] from, double[][] to) {
    return new PairedUnits(
        "in-ear",
        grid,
        Collections.nCopies(from.length, "Alder"),
        onFixture(grid, from),
        onFixture(grid, to));
  }

  private static PairedUnits.OnFixture onFixture(BandGrid grid, double[][] levels) {
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    List<Levels> means = Arrays.stream(levels).map(l -> Levels.copyOf(grid, l)).toList();
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(levels.length, Collections.nCopies(grid.size(), 1)),
        Levels.copyOf(grid, unknown),
        means.stream().map(List::of).toList());
  }

  private static Equivalence equivalence(PairedUnits paired, double limitDb) {
    return Equivalence.of(
        new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired),
        new Anchor.None(),
        limitDb,
        0.95);
  }

  /** tost.R beside the values: pt and qt of R 4.2.2. */
  @Test
  void bothTestsAgreeWithR() {
    for (Map<String, String> row : ReferenceTable.rows("tost_t.csv")) {
      int freedom = Integer.parseInt(row.get("df"));
      double meanDb = number(row, "mean_db");
      double errorDb = number(row, "se_db");
      double p = Equivalence.p(meanDb, errorDb, freedom, number(row, "limit_db"));
      assertRelative(Math.max(number(row, "p_below"), number(row, "p_above")), p);
      boolean inside = Math.abs(meanDb) + number(row, "half_90_db") < number(row, "limit_db");
      assertEquals(inside, p < 0.05, row::toString);
    }
  }

  private static void assertRelative(double expected, double actual) {
    assertEquals(expected, actual, 1e-9 * expected + 1e-15);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /**
   * 15 pairs, two variables: the results of tost of the R package equivalence, as the test suite of
   * statsmodels records them; see the file.
   */
  @Test
  void agreesWithRecordedResultsOnPublishedPairs() {
    List<Map<String, String>> rows = ReferenceTable.rows("tost_paired_difference.csv");
    double[][] from = new double[rows.size()][];
    double[][] to = new double[rows.size()][];
    for (int i = 0; i < from.length; i++) {
      Map<String, String> row = rows.get(i);
      from[i] = new double[] {number(row, "var1_group2"), number(row, "var2_group2")};
      to[i] = new double[] {number(row, "var1_group1"), number(row, "var2_group1")};
    }
    BandGrid two = new BandGrid(BandGrid.covering(100, 10_000, 1).bands().subList(0, 2));
    Equivalence found = equivalence(kind(two, from, to), 0.6);
    Equivalence.Verdict first = found.bands().get(0).orElseThrow();
    Equivalence.Verdict second = found.bands().get(1).orElseThrow();
    assertEquals(0.003166881489265175, first.p(), 1e-12);
    assertEquals(-0.0744336620516462, first.mean().meanDb() - first.halfDb(), 1e-9);
    assertEquals(0.4037669953849797, first.mean().meanDb() + first.halfDb(), 1e-9);
    assertTrue(first.alone());
    assertEquals(0.4412034046017588, second.p(), 1e-12);
    assertFalse(second.alone());
    assertFalse(second.together());
  }

  /** Wellek 2003, p. 212, and SAS PROC TTEST on it: overall p 0.0031; see the file. */
  @Test
  void agreesWithTheBioequivalenceExample() {
    List<Map<String, String>> rows = ReferenceTable.rows("tost_paired_ratio.csv");
    double[] logs =
        rows.stream()
            .mapToDouble(r -> Math.log(number(r, "test_auc") / number(r, "reference_auc")))
            .toArray();
    double mean = Arrays.stream(logs).average().orElseThrow();
    double squares = Arrays.stream(logs).map(v -> (v - mean) * (v - mean)).sum();
    double error = Math.sqrt(squares / (11.0 * 12));
    double p = Equivalence.p(mean, error, 11, Math.log(1.25));
    // Below 0.003059338541, above 0.000051247733: the greater counts.
    assertEquals(0.003059338541, p, 1e-11);
    assertEquals(0.0031, p, 5e-5);
  }

  @Test
  void runsOfBandsAreToldWithTheirEdges() {
    BandGrid grid = BandGrid.covering(125, 8000, 1);
    double[][] to = new double[6][grid.size()];
    for (int i = 0; i < 6; i++) {
      int unit = i;
      // Bands 1, 2 and 5 agree closely; the others differ by 2 dB.
      Arrays.setAll(
          to[i], b -> (b == 1 || b == 2 || b == 5 ? 0 : 2) + 0.05 * Math.sin(1 + unit * (b + 2)));
    }
    Equivalence found = equivalence(kind(grid, new double[6][grid.size()], to), 0.5);
    assertEquals(
        List.of(
            new FrequencyRange(grid.band(1).lowerHz(), grid.band(2).upperHz()),
            new FrequencyRange(grid.band(5).lowerHz(), grid.band(5).upperHz())),
        found.runs());
    assertEquals(3 * grid.band(0).octaves(), found.octaves(Equivalence.Verdict::together), 1e-12);
    assertEquals(3 * grid.band(0).octaves(), found.octaves(Equivalence.Verdict::alone), 1e-12);
  }

  @Test
  void withoutScatterTheMeanDecides() {
    assertEquals(0, Equivalence.p(0.49, 0, 5, 0.5));
    assertEquals(1, Equivalence.p(0.5, 0, 5, 0.5));
    assertEquals(1, Equivalence.p(-0.6, 0, 5, 0.5));
    assertThrows(IllegalArgumentException.class, () -> Equivalence.p(0, 1, 5, 0));
    assertThrows(IllegalArgumentException.class, () -> Equivalence.p(0, -1, 5, 1));
  }
}
