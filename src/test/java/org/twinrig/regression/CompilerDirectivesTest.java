package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The launcher names classes to the compiler of Java, which says nothing of one that is gone. */
class CompilerDirectivesTest {
  private static final Path DIRECTIVES = Path.of("src/main/launcher/compiler-directives.json");

  @Test
  void theClassesNamedAreThere() throws IOException {
    List<String> named =
        Pattern.compile("\"(org/twinrig/[A-Za-z/]+)[^\"]*\"")
            .matcher(Files.readString(DIRECTIVES))
            .results()
            .map(m -> m.group(1))
            .toList();
    assertFalse(named.isEmpty());
    for (String name : named) {
      Path source = Path.of("src/main/java");
      assertTrue(
          Files.exists(source.resolve(name + ".java")) || Files.isDirectory(source.resolve(name)),
          name);
    }
  }

  /** A whole package takes the compiler longer than its loops save. */
  @Test
  void noWholePackageOfTheEstimateIsNamed() throws IOException {
    String text = Files.readString(DIRECTIVES);
    assertFalse(text.contains("org/twinrig/regression/*"), text);
    assertFalse(text.contains("org/twinrig/reliability/*"), text);
  }
}
