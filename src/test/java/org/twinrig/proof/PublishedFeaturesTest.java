package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.simulation.FixturePair;

/** The committed table says what is promised of shared features. */
class PublishedFeaturesTest {
  private static final Path TABLE = Path.of("studies", "feature-proof", "features.csv");

  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(TABLE);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void everyCaseIsThere() throws IOException {
    Set<String> cases =
        rows().stream()
            .map(r -> r.get("units") + r.get("fixtures") + r.get("kind"))
            .collect(Collectors.toSet());
    assertEquals(4 * FixturePair.values().length * 2, cases.size());
    assertEquals(cases.size(), rows().size());
    assertTrue(rows().stream().allMatch(r -> number(r, "studies") >= 400));
  }

  @Test
  void aPlantedFeatureIsFoundInNineteenStudiesOfTwenty() throws IOException {
    for (Map<String, String> row : rows()) {
      if (!row.get("fixtures").equals("alike") && number(row, "units") >= 12) {
        assertTrue(number(row, "found") >= 0.95, row::toString);
      }
    }
  }

  /** The share itself is 0.95 or more over all cases; a single one may miss it by its chance. */
  @Test
  void nothingIsClaimedThatIsNotThere() throws IOException {
    double sum = 0;
    int alike = 0;
    for (Map<String, String> row : rows()) {
      assertTrue(number(row, "clean_high") >= 0.95, row::toString);
      if (row.get("fixtures").equals("alike") && number(row, "units") >= 12) {
        sum += number(row, "clean");
        alike++;
      }
    }
    assertTrue(sum / alike >= 0.95, "clean in " + sum / alike + " of studies on alike fixtures");
  }

  /** What is planted sits where the simulated fixtures have it. */
  @Test
  void thePlacesAreThePlantedOnes() throws IOException {
    for (Map<String, String> row : rows()) {
      if (row.get("fixtures").equals("peak on new")) {
        assertEquals(8000, number(row, "place_hz"), 120);
      } else if (row.get("fixtures").equals("notch on old")) {
        assertEquals(9000, number(row, "place_hz"), 120);
      }
    }
  }
}
