package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table of departing units keeps its promises. */
class PublishedUnitClaimsTest {
  private static final Path TABLE = Path.of("studies", "claims-proof", "units.csv");
  private static final String ALL = "all three";

  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(TABLE);
  }

  private static List<Map<String, String>> rows(String fault) throws IOException {
    return rows().stream().filter(r -> r.get("fault").startsWith(fault)).toList();
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static String design(Map<String, String> row) {
    return row.get("simulator") + " " + row.get("units") + " x " + row.get("seatings");
  }

  @Test
  void everyDesignIsTriedOnBothSimulators() throws IOException {
    Set<String> designs = new TreeSet<>();
    for (String design :
        List.of("6 x 1", "6 x 5", "8 x 3", "12 x 1", "12 x 3", "12 x 5", "20 x 5")) {
      designs.add("impedances " + design);
      designs.add("curves " + design);
    }
    for (String fault : rows().stream().map(r -> r.get("fault")).distinct().toList()) {
      assertEquals(
          designs,
          rows(fault).stream()
              .map(PublishedUnitClaimsTest::design)
              .collect(Collectors.toCollection(TreeSet::new)),
          fault);
    }
    assertEquals(14 * 44, rows().size());
  }

  @Test
  void unitsWithoutAFaultAreSeldomAccused() throws IOException {
    for (Map<String, String> row : rows()) {
      assertTrue(number(row, "innocent_accused") <= 0.02, row::toString);
    }
    for (Map<String, String> row : rows("none")) {
      if (row.get("kind").equals(ALL)) {
        assertTrue(number(row, "studies") >= 600, row::toString);
        double most = number(row, "units") < 8 ? 0.1 : 0.05;
        assertTrue(number(row, "doubted_low") <= most, row::toString);
      }
    }
  }

  @Test
  void sixStandardDeviationsAreFoundInNineOfTen() throws IOException {
    for (Map<String, String> row : rows("third of an octave")) {
      boolean promised = number(row, "units") >= 12 && number(row, "seatings") >= 3;
      if (row.get("kind").equals(ALL) && promised && number(row, "size_sd") == 6) {
        assertTrue(number(row, "doubted_high") >= 0.9, row::toString);
      }
    }
  }

  @Test
  void whatIsStatedIsSo() throws IOException {
    for (Map<String, String> row : rows("as stated: third of an octave")) {
      assertTrue(number(row, "doubted_high") >= 0.55, row::toString);
      assertTrue(number(row, "doubted_low") <= 0.85, row::toString);
    }
    for (Map<String, String> row : rows("as stated: several octaves")) {
      assertTrue(number(row, "doubted_high") >= 0.7, row::toString);
    }
  }

  /** More is found of what is larger. */
  @Test
  void powerGrowsWithTheSize() throws IOException {
    Map<String, Double> before = new HashMap<>();
    for (Map<String, String> row : rows("third of an octave")) {
      String where = design(row) + row.get("kind");
      double found = number(row, "doubted");
      assertTrue(found >= before.getOrDefault(where, 0.0) - 0.02, row::toString);
      before.put(where, found);
    }
  }
}
