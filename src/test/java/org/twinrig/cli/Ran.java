package org.twinrig.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * What the program said and did when it was run through its own door.
 *
 * @param status its exit status
 * @param out standard output, its lines ended by a line feed
 * @param err standard error, likewise
 */
record Ran(int status, String out, String err) {

  static Ran of(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status = Main.run(new PrintWriter(out), new PrintWriter(err), arguments);
    return new Ran(
        status, out.toString().replace("\r\n", "\n"), err.toString().replace("\r\n", "\n"));
  }

  /** Copies the files of a folder, but not results that were written into it. */
  static void copy(Path from, Path to) throws IOException {
    for (String file : files(from)) {
      if (!file.startsWith("results/")) {
        Path target = to.resolve(file);
        Files.createDirectories(target.getParent());
        Files.copy(from.resolve(file), target);
      }
    }
  }

  /** Whether a result file has the same bytes each time: those that tell times have not. */
  static boolean repeats(String file) {
    return !file.endsWith("run.json") && !file.endsWith("manifest.sha256");
  }

  /** The files below a folder, relative to it, in order, with {@code /} on every system. */
  static List<String> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }
}
