package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
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
        "kind,knee_db,limit_factor,lost_seals,found,sensitivity,slight_lost_seals,slight_found,"
            + "sound_captures,accused,false_alarm_share,rms_suggest_db,rms_exclude_db,"
            + "rms_all_sound_db",
        Files.readAllLines(TABLE).get(0));
    List<String[]> inForce = rows().stream().filter(r -> Double.parseDouble(r[2]) == 1).toList();
    assertEquals(
        Stream.of("0.000000", "4.000000")
            .flatMap(
                knee ->
                    Stream.of("closed over-ear", "in-ear", "on-ear", "open over-ear")
                        .map(kind -> kind + " " + knee))
            .toList(),
        inForce.stream().map(r -> r[0] + " " + r[1]).toList());
    for (String[] row : inForce) {
      assertTrue(Integer.parseInt(row[3]) >= 200, row[0] + ": lost seals");
      assertTrue(
          Double.parseDouble(row[5]) >= (Double.parseDouble(row[1]) > 0 ? 0.85 : 0.95),
          row[0] + ": sensitivity " + row[5]);
      assertTrue(Double.parseDouble(row[10]) <= 0.01, row[0] + ": false alarms " + row[10]);
      assertTrue(
          Double.parseDouble(row[12]) <= 0.5 * Double.parseDouble(row[11]),
          row[0] + ": error " + row[12] + " against " + row[11]);
    }
  }

  /** A higher limit finds and accuses less. */
  @Test
  void theTradeOffIsMonotonic() throws IOException {
    List<String[]> rows = rows();
    assertEquals(80, rows.size());
    for (int k = 1; k < rows.size(); k++) {
      if (rows.get(k)[0].equals(rows.get(k - 1)[0]) && rows.get(k)[1].equals(rows.get(k - 1)[1])) {
        assertTrue(Integer.parseInt(rows.get(k)[4]) <= Integer.parseInt(rows.get(k - 1)[4]));
        assertTrue(Integer.parseInt(rows.get(k)[9]) <= Integer.parseInt(rows.get(k - 1)[9]));
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
