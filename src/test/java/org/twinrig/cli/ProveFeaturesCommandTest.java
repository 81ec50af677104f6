package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code twinrig prove-features} through the program's own door. */
class ProveFeaturesCommandTest {
  @TempDir private Path folder;

  private static Ran prove(String... arguments) {
    return Ran.of(
        Stream.concat(Stream.of("prove-features"), Stream.of(arguments)).toArray(String[]::new));
  }

  @Test
  void fixturesThatAreAlikeGiveATableWithoutAPlace() throws IOException {
    Path file = folder.resolve("features.csv");
    String[] arguments = {
      "--studies=3", "--seed=2", "--units=6", "--fixtures", "alike", "--out", file.toString()
    };
    Ran ran = prove(arguments);
    assertEquals(0, ran.status(), ran.err());
    List<String> lines = Files.readAllLines(file);
    assertEquals(
        "units,fixtures,kind,studies,clean,clean_low,clean_high,claims_per_study,place_hz,height_db,"
            + "found,found_low,found_high,centre_held,height_held",
        lines.get(0));
    assertEquals(3, lines.size());
    assertTrue(lines.get(1).matches("6,alike,open over-ear,3,[01]\\.\\d+,.*,,,,,,,"), lines.get(1));
    assertTrue(
        ran.out().startsWith("6 units, open over-ear, fixtures alike: nothing false claimed in "),
        ran.out());
    byte[] bytes = Files.readAllBytes(file);
    Files.delete(file);
    assertEquals(ran, prove(arguments));
    assertArrayEquals(bytes, Files.readAllBytes(file));
  }

  @Test
  void wrongValuesAreWrongUsage() {
    assertUsage("--studies must be 1 or more, but is 0", "--studies=0", "--seed=1");
    assertUsage("--units must be 3 or more, but is 2", "--studies=1", "--seed=1", "--units=2");
    assertUsage(
        "there are no fixtures `plates`; known pairs: plate to head, alike, peak on new, notch on"
            + " old, peak and notch",
        "--studies=1",
        "--seed=1",
        "--fixtures=alike,plates");
    assertUsage("Missing required option: '--seed=N'", "--studies=1");
  }

  private static void assertUsage(String message, String... arguments) {
    Ran ran = prove(arguments);
    assertEquals(2, ran.status(), message);
    assertEquals(message, ran.err().lines().findFirst().orElseThrow());
  }

  @Test
  void anotherFileIsNotOverwritten() throws IOException {
    Path mine = Files.writeString(folder.resolve("thesis.txt"), "years of work\n");
    Ran ran = prove("--studies=9999999", "--seed=1", "--out", mine.toString());
    assertEquals(1, ran.status());
    assertEquals("years of work\n", Files.readString(mine));
  }
}
