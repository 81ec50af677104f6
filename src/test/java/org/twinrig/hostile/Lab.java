package org.twinrig.hostile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** A copy of the sound study among the test resources, of which single files are replaced. */
record Lab(Path root) {
  private static final Path SOUND = Path.of("src/test/resources/study/lab");

  static Lab in(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(SOUND)) {
      for (Path each : all.toList()) {
        Path copy = root.resolve(SOUND.relativize(each));
        if (Files.isDirectory(each)) {
          Files.createDirectories(copy);
        } else {
          Files.copy(each, copy);
        }
      }
    }
    return new Lab(root);
  }

  Path study() {
    return root.resolve("studies/plate-to-head");
  }

  Path file(String name) {
    return study().resolve(name);
  }

  byte[] sound(String name) throws IOException {
    return Files.readAllBytes(SOUND.resolve("studies/plate-to-head").resolve(name));
  }
}
