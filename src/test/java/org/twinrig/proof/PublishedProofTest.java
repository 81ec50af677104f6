package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table of the proof says what is promised of prediction intervals. */
class PublishedProofTest {
  private static final Path TABLE = Path.of("studies", "interval-proof", "coverage.csv");

  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(TABLE);
  }

  @Test
  void everyCaseIsThere() throws IOException {
    Map<String, Long> cases =
        rows().stream()
            .collect(
                Collectors.groupingBy(
                    r -> r.get("units") + r.get("kind") + r.get("graph_seatings"),
                    Collectors.counting()));
    assertEquals(4 * 3 * 2, cases.size());
    assertTrue(cases.values().stream().allMatch(rows -> rows == 6));
    assertEquals(
        List.of("16", "30", "6", "8"),
        rows().stream().map(r -> r.get("units")).distinct().sorted().toList());
  }

  @Test
  void thePromiseIsKept() throws IOException {
    for (Map<String, String> row : rows()) {
      for (String model : Arrays.asList("coverage_offset", "coverage_average")) {
        double coverage = Double.parseDouble(row.get(model));
        switch (row.get("region")) {
          case "all bands" ->
              assertTrue(
                  coverage >= (row.get("units").equals("6") ? 0.92 : 0.93) && coverage <= 0.97,
                  row::toString);
          case "mean of regions" -> assertTrue(coverage > 0 && coverage <= 1, row::toString);
          default -> assertTrue(coverage >= 0.90, row::toString);
        }
      }
    }
  }
}
