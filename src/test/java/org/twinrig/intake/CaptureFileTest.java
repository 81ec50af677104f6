package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.UnusableInput;

/** The file itself: missing, a folder, too large; its fingerprint; many points. */
class CaptureFileTest {
  @TempDir Path folder;

  private static String refusal(Path file) {
    return assertThrows(UnusableInput.class, () -> CaptureFile.read(file, "plate/a.txt"))
        .getMessage();
  }

  @Test
  void missingFileIsRefused() {
    assertEquals(
        "plate/a.txt: there is no such file; check the name and the folder it is looked for in",
        refusal(folder.resolve("none.txt")));
  }

  @Test
  void folderIsRefused() {
    assertEquals("plate/a.txt: this is a folder; name one file in it", refusal(folder));
  }

  @Test
  void unreadableFileIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("locked.txt"), "20 85.3\n200 85.9\n");
    assumeFalse(!file.toFile().setReadable(false) || Files.isReadable(file), "may read everything");
    assertEquals(
        "plate/a.txt: the file may not be read; give this user the permission to read it",
        refusal(file));
  }

  @Test
  void fileAboveSixtyFourMegabytesIsRefused() throws IOException {
    assertEquals(
        "plate/a.txt: the file has 64.1 MB, but at most 64 MB are read;"
            + " export this one curve as text",
        refusal(sparse(CaptureFile.MOST_BYTES + 1)));
  }

  @Test
  void soundOfSixtyFourMegabytesIsStillRead() throws IOException {
    Path file = sparse(CaptureFile.MOST_BYTES);
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.write(new byte[] {'R', 'I', 'F', 'F'});
    }
    assertEquals(
        "plate/a.txt: the file is of the RIFF family, but holds '????';"
            + " export the sound as WAV, or the response as text",
        refusal(file));
  }

  @Test
  void textAboveThirtyTwoMegabytesIsRefused() throws IOException {
    assertEquals(
        "plate/a.txt: the text has 32.1 MB, but at most 32 MB are read;"
            + " export this one curve with fewer points",
        refusal(sparse(TextCapture.MOST_BYTES + 1L)));
  }

  @Test
  void textOfThirtyTwoMegabytesIsStillRead() throws IOException {
    // Zero bytes: read, and then found to be no text.
    assertEquals(
        "plate/a.txt:1: there is a control character (code 0): this is not text;"
            + " export the curve as text",
        refusal(sparse(TextCapture.MOST_BYTES)));
  }

  private Path sparse(long bytes) throws IOException {
    Path file = folder.resolve("large.txt");
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.setLength(bytes);
    }
    return file;
  }

  @Test
  void fingerprintIsThatOfTheBytes() throws UnusableInput {
    // printf '20;85.3\n200;85.9\n' | sha256sum (GNU coreutils 9.1)
    assertEquals(
        "2174852cf497da97af0f944ae83ffa668fae1330b431534bf060054a5d4b3ab5",
        CaptureBytes.read("20;85.3\n200;85.9\n").sha256());
  }

  @Test
  void hundredThousandPointsAreRead() throws UnusableInput {
    StringBuilder text = new StringBuilder("Frequency (Hz)\tLevel (dB)\r\n");
    for (int i = 0; i < 100_000; i++) {
      text.append(20 + i * 0.25).append('\t').append(60 + i % 400 * 0.125).append("\r\n");
    }
    Reading reading = CaptureBytes.read(text.toString());
    assertEquals(100_000, reading.response().size());
    assertEquals(100_000, reading.points());
    for (int i = 0; i < 100_000; i++) {
      assertEquals(20 + i * 0.25, reading.response().frequencyHz(i));
      assertEquals(60 + i % 400 * 0.125, reading.response().levelDb(i));
    }
  }
}
