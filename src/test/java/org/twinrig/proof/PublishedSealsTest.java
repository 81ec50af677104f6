package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The committed table says what is promised of lost seals, and can be made again. */
class PublishedSealsTest {
  private static final Path TABLE = Path.of("studies", "seal-proof", "seals.csv");

  private static List<String[]> rows() throws IOException {
    return Files.readAllLines(TABLE).stream().skip(1).map(l -> l.split(",", -1)).toList();
  }

  @Test
  void thePromiseIsKeptForEveryKind() throws IOException {
    assertEquals(
        "kind,limit_factor,lost_seals,found,sensitivity,slight_lost_seals,slight_found,"
            + "sound_captures,accused,false_alarm_share,rms_suggest_db,rms_exclude_db,"
            + "rms_all_sound_db",
        Files.readAllLines(TABLE).get(0));
    List<String[]> inForce = rows().stream().filter(r -> Double.parseDouble(r[1]) == 1).toList();
    assertEquals(
        List.of("closed over-ear", "in-ear", "on-ear", "open over-ear"),
        inForce.stream().map(r -> r[0]).toList());
    for (String[] row : inForce) {
      assertTrue(Integer.parseInt(row[2]) >= 200, row[0] + ": lost seals");
      assertTrue(Double.parseDouble(row[4]) >= 0.95, row[0] + ": sensitivity " + row[4]);
      assertTrue(Double.parseDouble(row[9]) <= 0.01, row[0] + ": false alarms " + row[9]);
      assertTrue(
          Double.parseDouble(row[11]) <= 0.5 * Double.parseDouble(row[10]),
          row[0] + ": error " + row[11] + " against " + row[10]);
    }
  }

  /** A higher limit finds and accuses less. */
  @Test
  void theTradeOffIsMonotonic() throws IOException {
    List<String[]> rows = rows();
    assertEquals(40, rows.size());
    for (int k = 1; k < rows.size(); k++) {
      if (rows.get(k)[0].equals(rows.get(k - 1)[0])) {
        assertTrue(Integer.parseInt(rows.get(k)[3]) <= Integer.parseInt(rows.get(k - 1)[3]));
        assertTrue(Integer.parseInt(rows.get(k)[8]) <= Integer.parseInt(rows.get(k - 1)[8]));
      }
    }
  }

  @Test
  void theSameSeedGivesTheSameFiguresOnAnyNumberOfThreads() {
    SealProof proof = new SealProof(3, 3, 0.2, List.of(0.0));
    List<SealProof.Row> rows = proof.rows(Small.harness(2, 7, 1));
    assertEquals(rows, proof.rows(Small.harness(2, 7, 2)));
    assertTrue(rows.stream().mapToInt(r -> r.lost().captures()).sum() > 0);
    for (SealProof.Row row : rows) {
      assertTrue(row.lost().reported() <= row.lost().captures());
      assertTrue(row.sound().reported() <= row.sound().captures());
      assertEquals(row.limitFactor() == 1, row.effect().isPresent());
    }
  }
}
