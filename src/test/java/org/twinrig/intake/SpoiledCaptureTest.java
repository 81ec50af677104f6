package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Spoiled files, each with its whole message as {@code refusals.txt} holds it, word by word. */
class SpoiledCaptureTest {
  private static final Path FOLDER = Path.of("src/test/resources/intake/spoiled");
  private static final Path MESSAGES = Path.of("src/test/resources/intake/refusals.txt");

  static Stream<String> messages() throws IOException {
    return Files.readAllLines(MESSAGES, StandardCharsets.UTF_8).stream();
  }

  @ParameterizedTest
  @MethodSource("messages")
  void isRefusedWithPlaceReasonAndRemedy(String message) {
    String name = message.substring(0, message.indexOf(':'));
    UnusableInput refusal =
        assertThrows(UnusableInput.class, () -> CaptureFile.read(FOLDER.resolve(name), name));
    assertEquals(message, refusal.getMessage());
    assertEquals(1, refusal.problems().size());
    assertEquals(Problem.Kind.REFUSED, refusal.problems().get(0).kind());
  }

  @Test
  void everySpoiledFileHasItsMessage() throws IOException {
    List<String> named = messages().map(m -> m.substring(0, m.indexOf(':'))).sorted().toList();
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertEquals(files.map(f -> f.getFileName().toString()).sorted().toList(), named);
    }
  }
}
