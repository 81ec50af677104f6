package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table keeps what its page promises. */
class PublishedContinuityTest {
  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(Path.of("studies", "continuity-proof", "continuity.csv"));
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void everyPlantIsTriedOnBothSimulators() throws IOException {
    assertEquals(2 * 3 * 3, rows().size());
    for (Map<String, String> row : rows()) {
      assertTrue(number(row, "studies") >= 100, row::toString);
    }
  }

  @Test
  void thePromiseIsKept() throws IOException {
    List<Double> falseDoubts = new ArrayList<>();
    for (Map<String, String> row : rows()) {
      boolean enough = number(row, "units") >= 8;
      switch (row.get("planted")) {
        case "nothing" -> {
          double slack = 2 * number(row, "doubted_mc_se");
          assertTrue(number(row, "doubted") <= 0.05 + slack, row::toString);
          falseDoubts.add(number(row, "doubted"));
          assertTrue(!enough || number(row, "inside") >= 0.93, row::toString);
        }
        case "scatter of 0.5 dB" -> {
          assertTrue(!enough || number(row, "inside") >= 0.93, row::toString);
          assertTrue(number(row, "inside_without_evidence") < 0.93, row::toString);
        }
        default -> assertTrue(!enough || number(row, "doubted") >= 0.9, row::toString);
      }
    }
    double mean = falseDoubts.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    assertTrue(mean <= 0.05, () -> "doubted without a change: " + mean);
  }
}
