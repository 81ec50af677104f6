package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs killed at random points leave either the old or the new results whole. The system property
 * {@code twinrig.kills} says how many; the continuous build asks for 20.
 */
class KilledRunTest {
  private static final int KILLS = Integer.getInteger("twinrig.kills", 2);
  private static final Path DATA = Path.of("demo-data", "plate-to-head");

  @TempDir private Path folder;

  private String[] translate(Path catalogue, Path out, String... more) {
    return Stream.concat(
            Stream.of(
                "translate",
                folder.resolve("results/translation.json").toString(),
                "--catalogue",
                catalogue.toString(),
                "--out",
                out.toString(),
                "--figures"),
            Stream.of(more))
        .toArray(String[]::new);
  }

  @Test
  void eitherTheOldOrTheNewResultsAreWhole() throws IOException, InterruptedException {
    assertEquals(
        0,
        Ran.of("study", "studies/plate-to-head", "--out", folder.resolve("results").toString())
            .status());
    Path few = catalogue("few.csv", 4);
    Path many = catalogue("many.csv", 10);
    Path old = folder.resolve("old");
    Path fresh = folder.resolve("fresh");
    assertEquals(0, Ran.of(translate(few, old)).status());
    assertEquals(0, Ran.of(translate(many, fresh)).status());
    Random random = new Random(9);
    int finished = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      Path out = folder.resolve("out-" + kill);
      assertEquals(0, Ran.of(translate(few, out)).status());
      Process process = start(translate(many, out, "--threads", "1"));
      if (process.waitFor(400 + random.nextInt(1200), TimeUnit.MILLISECONDS)) {
        finished++;
      }
      process.destroyForcibly().waitFor();
      // Between its two moves the old results lie beside their place; the next run puts them back.
      Path beside = folder.resolve(".out-" + kill + ".earlier");
      Path there = Files.exists(out) ? out : beside;
      assertTrue(same(there, old) || same(there, fresh), "kill " + kill);
      assertEquals(0, Ran.of(translate(many, out)).status());
      assertTrue(same(out, fresh), "run again after kill " + kill);
    }
    assertTrue(finished < KILLS, "every run was finished before it was killed");
  }

  /** The first graphs of the demonstration, named from a folder of the test's own. */
  private Path catalogue(String name, int graphs) throws IOException {
    Path place = Files.createDirectories(folder.resolve("lab"));
    try (Stream<Path> files = Files.list(DATA.resolve("catalogue"))) {
      for (Path file : files.toList()) {
        Path copy = Files.createDirectories(place.resolve("catalogue"));
        if (!Files.exists(copy.resolve(file.getFileName()))) {
          Files.copy(file, copy.resolve(file.getFileName()));
        }
      }
    }
    List<String> rows =
        Files.readAllLines(DATA.resolve("catalogue.csv")).stream()
            .filter(l -> !l.startsWith("#"))
            .limit(graphs + 1L)
            .toList();
    return Files.write(place.resolve(name), rows);
  }

  private static Process start(String... arguments) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> command =
        Stream.concat(
                Stream.of(java, "-cp", System.getProperty("java.class.path"), Main.class.getName()),
                Stream.of(arguments))
            .toList();
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static boolean same(Path a, Path b) throws IOException {
    List<String> files = Ran.files(a);
    if (!files.equals(Ran.files(b))) {
      return false;
    }
    for (String file : files) {
      if (Ran.repeats(file)) {
        assertArrayEquals(
            Files.readAllBytes(a.resolve(file)), Files.readAllBytes(b.resolve(file)), file);
      }
    }
    return true;
  }
}
