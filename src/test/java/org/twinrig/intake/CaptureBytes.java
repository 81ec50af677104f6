package org.twinrig.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.twinrig.problem.UnusableInput;

/** A capture file made of a test's own bytes, gone when the test has read it. */
final class CaptureBytes {
  private CaptureBytes() {}

  static Reading read(byte[] bytes) throws UnusableInput {
    try {
      Path file = Files.createTempFile("capture", ".txt");
      try {
        Files.write(file, bytes);
        return CaptureFile.read(file, "capture.txt");
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Reading read(String text) throws UnusableInput {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  /** The points as text, so that a test can show them: {@code 20.0:85.3 25.0:85.9}. */
  static String points(Reading reading) {
    StringBuilder points = new StringBuilder();
    for (int i = 0; i < reading.response().size(); i++) {
      points.append(i == 0 ? "" : " ");
      points.append(NumberText.plain(reading.response().frequencyHz(i)));
      points.append(':');
      points.append(NumberText.plain(reading.response().levelDb(i)));
    }
    return points.toString();
  }

  static String notes(Reading reading) {
    return String.join("\n", reading.notes().stream().map(n -> n.text()).toList());
  }
}
