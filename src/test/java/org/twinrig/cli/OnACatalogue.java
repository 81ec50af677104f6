package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests that take a small catalogue through the demonstration's translation. */
abstract class OnACatalogue {
  static final Path STUDY = Path.of("studies", "plate-to-head");
  static final Path DATA = Path.of("demo-data", "plate-to-head");

  static Path translation;

  @TempDir Path folder;
  Path catalogue;

  @BeforeAll
  static void study() {
    translation = Once.RESULTS.resolve("translation.json");
  }

  /** The demonstration's results, which tests read and share. */
  private static final class Once {
    static final Path RESULTS = results();

    private static Path results() {
      try {
        Path results = Files.createTempDirectory("demonstration").resolve("results");
        assertEquals(0, Ran.of("study", STUDY.toString(), "--out", results.toString()).status());
        Runtime.getRuntime().addShutdownHook(new Thread(() -> deleted(results)));
        return results;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static void deleted(Path results) {
      try (Stream<Path> all = Files.walk(results.getParent())) {
        all.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** The first twelve graphs of the demonstration, in a folder of the test's own. */
  @BeforeEach
  void lab() throws IOException {
    List<String> rows =
        Files.readAllLines(DATA.resolve("catalogue.csv")).stream()
            .filter(l -> !l.startsWith("#"))
            .limit(13)
            .toList();
    Files.createDirectory(folder.resolve("catalogue"));
    for (String row : rows.subList(1, rows.size())) {
      String file = row.split(",", -1)[3];
      Files.copy(DATA.resolve(file), folder.resolve(file));
    }
    Files.copy(
        DATA.resolve("catalogue/house-reference.csv"),
        folder.resolve("catalogue/house-reference.csv"));
    catalogue = folder.resolve("catalogue.csv");
    Files.write(catalogue, rows);
  }

  Ran translate(String out, String... more) {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "translate",
                translation.toString(),
                "--catalogue",
                catalogue.toString(),
                "--out",
                folder.resolve(out).toString()));
    arguments.addAll(List.of(more));
    return Ran.of(arguments.toArray(String[]::new));
  }

  /** What lies in the folder, hidden things included. */
  List<String> beside() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  List<String> rows() throws IOException {
    return new ArrayList<>(Files.readAllLines(catalogue));
  }

  void replace(int row, String from, String to) throws IOException {
    List<String> rows = rows();
    assertTrue(rows.get(row).contains(from), rows.get(row));
    rows.set(row, rows.get(row).replace(from, to));
    Files.write(catalogue, rows);
  }
}
