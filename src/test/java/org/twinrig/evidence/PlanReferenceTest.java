package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** Against R 4.2.2 (stats); the script stands beside the tables. */
class PlanReferenceTest {

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static int count(Map<String, String> row, String column) {
    return (int) number(row, column);
  }

  /** R: power.t.test(n, delta, sd, type = "paired"). */
  @Test
  void powerIsThatOfThePairedTest() {
    for (Map<String, String> row : ReferenceTable.rows("plan_power.csv")) {
      double delta = number(row, "delta_db");
      double sd = number(row, "sd_db");
      assertEquals(
          number(row, "power"),
          PairedPower.of(count(row, "units"), delta, sd, 0.95),
          1e-8,
          row::toString);
      int units = count(row, "units_for_90");
      assertEquals(
          OptionalInt.of(units), PairedPower.units(delta, sd, 0.95, 0.9, 500), row::toString);
      assertEquals(
          units == 3 ? OptionalInt.of(3) : OptionalInt.empty(),
          PairedPower.units(delta, sd, 0.95, 0.9, Math.max(3, units - 1)),
          row::toString);
    }
  }

  @Test
  void withoutScatterEveryDifferenceShows() {
    assertEquals(1, PairedPower.of(3, 0.01, 0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> PairedPower.of(3, 0, 1, 0.95));
    assertThrows(IllegalArgumentException.class, () -> PairedPower.of(3, 1, -1, 0.95));
  }

  /** R: quantiles of t, normal and χ², and the formulas of Plan written down anew. */
  @Test
  void halfWidthAndItsLimitAreThoseOfR() {
    for (Map<String, String> row : ReferenceTable.rows("plan_limit.csv")) {
      int nu = count(row, "nu");
      double m0 = number(row, "m0");
      ZoneVariance zone =
          new ZoneVariance(
              List.of(
                  new BandVariance(
                      count(row, "n0"),
                      1,
                      number(row, "v"),
                      0,
                      0,
                      new BandVariance.Seating(number(row, "a"), m0, nu),
                      new BandVariance.Seating(number(row, "b"), m0, nu))),
              0.95);
      Design design = new Design(count(row, "n"), count(row, "m_a"), count(row, "m_b"));
      double half = zone.halfDb(design);
      assertEquals(number(row, "half_db"), half, 1e-9);
      assertEquals(number(row, "upper_half_db"), zone.upperHalfDb(design), 1e-8);
      assertEquals(number(row, "never_below_db"), zone.neverBelowDb(), 1e-7);
    }
  }
}
