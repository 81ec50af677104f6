package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code twinrig prove} through the program's own door. */
class ProveCommandTest {
  @TempDir private Path folder;

  private static Ran prove(String... arguments) {
    return Ran.of(Stream.concat(Stream.of("prove"), Stream.of(arguments)).toArray(String[]::new));
  }

  private static Ran small(String... more) {
    List<String> all = new ArrayList<>(List.of("--studies", "2", "--seed", "4", "--units", "8"));
    all.addAll(List.of(more));
    return prove(all.toArray(String[]::new));
  }

  @Test
  void aSmallProofPrintsATableAndWritesIt() throws IOException {
    Path file = folder.resolve("coverage.csv");
    Ran first = small("--out", file.toString(), "--threads", "2");
    assertEquals(0, first.status(), first.err());
    assertEquals("", first.err());
    List<String> rows = Files.readAllLines(file);
    assertEquals(
        "units,kind,graph_seatings,region,from_hz,to_hz,studies,judgements,rms_offset_db,"
            + "rms_offset_mc_se_db,rms_auto_db,rms_auto_mc_se_db,ratio,ratio_mc_se,"
            + "coverage_offset,coverage_offset_mc_se,coverage_auto,coverage_auto_mc_se,"
            + "half_offset_db,half_auto_db,below_offset,below_auto",
        rows.get(0));
    assertEquals(1 + 2 * 3 * 6, rows.size());
    // 40 bands from 20 Hz to 200 Hz, 4 unseen units, 2 studies.
    assertTrue(
        rows.get(1).startsWith("8,open over-ear,5,bass,20.0000,200.0000,2,320,"), rows.get(1));
    assertFalse(rows.toString().contains("NaN"));
    assertTrue(
        first
            .out()
            .contains("8 units of each kind in the study, old graphs of 1 seating, 2 studies\n"),
        first.out());
    assertTrue(
        first
            .out()
            .contains("With 2 studies nothing is settled: the standard errors need 20 or more.\n"),
        first.out());
    byte[] bytes = Files.readAllBytes(file);
    Files.delete(file);
    assertEquals(first, small("--out", file.toString(), "--threads", "1"));
    org.junit.jupiter.api.Assertions.assertArrayEquals(bytes, Files.readAllBytes(file));
  }

  @Test
  void machinesGetTheSame() throws IOException {
    Ran ran = small("--json", "--kinds", "in-ear, on-ear", "--seatings", "1");
    assertEquals(0, ran.status(), ran.err());
    JsonNode root = new ObjectMapper().readTree(ran.out());
    assertEquals(2, root.get("studies").asInt());
    assertEquals(0.95, root.get("confidence").asDouble());
    assertEquals(2 * 6, root.get("rows").size());
    JsonNode row = root.get("rows").get(0);
    assertEquals("in-ear", row.get("kind").asText());
    assertEquals(1, row.get("graph_seatings").asInt());
    assertTrue(row.get("offset").get("coverage").isNumber());
    assertTrue(row.get("auto").get("rms_db_mc_se").isNumber());
    assertTrue(root.get("promise_kept").get("auto").isBoolean());
  }

  @Test
  void wrongValuesAreWrongUsage() {
    assertUsage("--studies must be 2 or more, but is 1", "--studies", "1", "--seed", "1");
    assertUsage("--units must be 3 or more, but is 2", TWO, "--units", "8,2");
    assertUsage("--units names 8 more than once", TWO, "--units", "8,8");
    assertUsage("--seatings must be 1 or more, but is 0", TWO, "--seatings", "0");
    assertUsage("--kinds names in-ear more than once", TWO, "--kinds", "in-ear,in-ear");
    assertUsage(
        "there is no kind `earbud`; known kinds: open over-ear, closed over-ear, on-ear, in-ear",
        TWO,
        "--kinds",
        "earbud");
    assertUsage("Missing required option: '--studies=N'", "--seed", "1");
    assertUsage("Missing required option: '--seed=N'", "--studies", "2");
    assertUsage("Invalid value for option '--units' (N): 'x' is not an int", TWO, "--units", "x");
  }

  private static final String TWO = "--studies=2";

  private static void assertUsage(String message, String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    if (all.contains(TWO)) {
      all.add("--seed=1");
    }
    Ran ran = prove(all.toArray(String[]::new));
    assertEquals(2, ran.status(), message);
    assertEquals(message, ran.err().lines().findFirst().orElseThrow());
  }

  @Test
  void aPlaceThatCannotHoldTheTableIsRefusedBeforeAnyWork() throws IOException {
    Path mine = Files.writeString(folder.resolve("thesis.txt"), "years of work\n");
    Path picture = Files.write(folder.resolve("picture"), new byte[] {(byte) 0xff, (byte) 0xfe});
    assertRefused(
        mine,
        "is there already, and is not known to be a table of twinrig that nobody changed; move it"
            + " away, or name another file with --out");
    assertRefused(
        picture,
        "is there already, and is not known to be a table of twinrig that nobody changed; move it"
            + " away, or name another file with --out");
    assertRefused(folder, "is a folder; name a file with --out");
    assertRefused(
        folder.resolve("nowhere").resolve("a.csv"),
        "there is no such folder; make it first or name another file with --out");
    assertEquals("years of work\n", Files.readString(mine));
  }

  private static void assertRefused(Path place, String why) {
    // So many studies would take days.
    Ran ran = prove("--studies", "9999999", "--seed", "1", "--out", place.toString());
    assertEquals(1, ran.status());
    assertEquals(place + ": " + why + "\n", ran.err());
  }
}
