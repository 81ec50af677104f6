package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table says what is promised of the mean's interval over all bands. */
class PublishedMeansTest {
  private static final Path TABLE = Path.of("studies", "interval-proof", "means.csv");

  @Test
  void theWholeTrueMeanIsHeldOnBothSimulatorsWithEveryNumberOfUnits() throws IOException {
    List<Map<String, String>> rows = ReferenceTable.rows(TABLE);
    assertEquals(
        2 * 3 * 4,
        rows.stream()
            .map(r -> r.get("simulator") + r.get("kind") + r.get("units"))
            .distinct()
            .count());
    assertEquals(2 * 3 * 4, rows.size());
    for (Map<String, String> row : rows) {
      assertTrue(Integer.parseInt(row.get("studies")) >= 100, row::toString);
      assertTrue(Double.parseDouble(row.get("whole_mean_held")) >= 0.93, row::toString);
    }
    assertEquals(
        List.of("curves", "impedances"),
        rows.stream().map(r -> r.get("simulator")).distinct().sorted().toList());
  }

  @Test
  void aFewStudiesGiveTheSameShareAgainAndTheirIntervalsNarrowWithUnits() {
    Harness few = new Harness(4, 7, 1, Situation.USUAL, told -> {});
    List<MeanProof.Row> rows = new MeanProof(List.of(6, 16), 200).rows(few);
    assertEquals(rows, new MeanProof(List.of(6, 16), 200).rows(few));
    for (int k = 0; k < rows.size(); k += 2) {
      assertTrue(rows.get(k).halfDb() > rows.get(k + 1).halfDb(), rows.get(k)::toString);
    }
  }
}
