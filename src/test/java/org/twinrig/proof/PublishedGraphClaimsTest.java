package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table says what the page beside it says. */
class PublishedGraphClaimsTest {
  private static final Path TABLE = Path.of("studies", "claims-proof", "graphs.csv");

  /** So many standard errors may be chance. */
  private static final double CHANCE = 2;

  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(TABLE);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void everyFaultIsTriedOnBothSimulators() throws IOException {
    Set<String> tried =
        rows().stream()
            .map(r -> r.get("simulator") + " " + r.get("fault"))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> all = new TreeSet<>();
    for (GraphClaimsProof.Fault fault : GraphClaimsProof.Fault.values()) {
      all.addAll(List.of("curves " + fault.word(), "impedances " + fault.word()));
    }
    assertEquals(all, tried);
    assertTrue(rows().stream().allMatch(r -> number(r, "studies") >= 20));
  }

  /** Of all kinds together, whatever the study. */
  @Test
  void soundGraphsAreRarelyDoubted() throws IOException {
    for (Map<String, String> row : rows()) {
      if (row.get("fault").equals("none") && row.get("kind").equals("all")) {
        double slack = CHANCE * number(row, "found_mc_se");
        assertTrue(number(row, "found") <= 0.05 + slack, row::toString);
      }
    }
  }

  /** Studies of twelve units or more, and what is found of each fault there at least. */
  @Test
  void faultsAreFoundAsOftenAsThePageSays() throws IOException {
    least("impedances", "noise of 1.5 dB a point", "all", 0.95);
    least("curves", "noise of 1.5 dB a point", "all", 0.95);
    least("impedances", "listed as in-ear", "open over-ear", 0.95);
    least("impedances", "listed as in-ear", "closed over-ear", 0.95);
    least("impedances", "listed as open over-ear", "in-ear", 0.95);
    least("impedances", "compensated listed as raw", "all", 0.9);
    least("curves", "listed as in-ear", "open over-ear", 0.85);
    least("curves", "listed as open over-ear", "in-ear", 0.85);
    least("curves", "listed as closed over-ear", "in-ear", 0.7);
    least("curves", "compensated listed as raw", "all", 0.65);
  }

  private static void least(String simulator, String fault, String kind, double share)
      throws IOException {
    int found = 0;
    for (Map<String, String> row : rows()) {
      if (row.get("simulator").equals(simulator)
          && row.get("fault").equals(fault)
          && row.get("kind").equals(kind)
          && number(row, "units") >= 12
          && !unknownDetail(row)) {
        assertTrue(number(row, "found") >= share, row::toString);
        found++;
      }
    }
    assertTrue(found > 0, fault);
  }

  /** Units seated once do not show what a seating adds to the fine structure. */
  private static boolean unknownDetail(Map<String, String> row) {
    return row.get("seatings").equals("1") && !row.get("graph_seatings").equals("1");
  }
}
