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

/** The committed table keeps what {@link PairClaimsProof} promises, but where the page says so. */
class PublishedPairClaimsTest {
  private static final Path TABLE = Path.of("studies", "claims-proof", "pairs.csv");

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static List<Map<String, String>> rows(String fault) throws IOException {
    return ReferenceTable.rows(TABLE).stream().filter(r -> r.get("fault").equals(fault)).toList();
  }

  @Test
  void everyFaultIsTriedOnBothSimulatorsWithFewAndManyUnits() throws IOException {
    for (String fault :
        List.of(
            "none", "units exchanged", "one unit twice", "fixtures exchanged", "kind doubtful")) {
      Set<String> tried =
          rows(fault).stream()
              .map(r -> r.get("simulator") + " " + r.get("units"))
              .collect(Collectors.toSet());
      assertEquals(
          Set.of(
              "impedances 6",
              "impedances 8",
              "impedances 12",
              "impedances 20",
              "curves 6",
              "curves 8",
              "curves 12",
              "curves 20"),
          tried,
          fault);
    }
  }

  @Test
  void unitsWithoutAFaultAreSeldomDoubted() throws IOException {
    for (Map<String, String> row : ReferenceTable.rows(TABLE)) {
      assertTrue(number(row, "innocent_accused") <= 0.02, row::toString);
      if (row.get("fault").equals("none")) {
        assertTrue(number(row, "found_low") <= 0.1, row::toString);
      }
    }
  }

  @Test
  void exchangedUnitsAreFoundWithTwelveUnits() throws IOException {
    for (Map<String, String> row : rows("units exchanged")) {
      if (number(row, "units") >= 12) {
        assertTrue(number(row, "found_high") >= 0.9, row::toString);
      }
    }
  }

  @Test
  void oneUnitTwiceIsFoundWithTwelveUnits() throws IOException {
    for (Map<String, String> row : rows("one unit twice")) {
      if (number(row, "units") >= 12 && number(row, "seatings") >= 3) {
        assertTrue(number(row, "found_high") >= 0.7, row::toString);
      }
    }
  }

  @Test
  void inEarsAndOverEarsAreToldApartWithTwelveUnits() throws IOException {
    for (Map<String, String> row : rows("kind doubtful")) {
      if (number(row, "units") >= 12
          && row.get("kind").contains("in-ear")
          && row.get("simulator").equals("impedances")) {
        assertTrue(number(row, "found_high") >= 0.9, row::toString);
      }
    }
  }
}
