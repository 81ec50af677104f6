package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.UnusableInput;
import org.twinrig.translation.Sealed;
import org.twinrig.translation.TranslationFile;

/** A translation.json that would blow up a careless reader is refused in words. */
class JsonBombTest {
  private static final String UNCHANGED =
      "; give the translation.json that `twinrig study` wrote, unchanged";
  private static final String TOO_MUCH =
      "something is nested deeper or written longer than a translation has it" + UNCHANGED;

  @TempDir Path temp;

  private static String sound() throws IOException {
    return Files.readString(FoundFilesTest.FOLDER.resolve("translation/window.json"));
  }

  private String answer(String json) throws IOException {
    Path file = Files.writeString(temp.resolve("translation.json"), json);
    try {
      return TranslationFile.read(file, "t.json").origin().title();
    } catch (UnusableInput e) {
      return e.getMessage();
    }
  }

  private String answer(String sound, String spoiled) throws IOException {
    String json = sound().replaceFirst(sound, spoiled);
    assertNotEquals(sound(), json);
    return answer(Sealed.text(json));
  }

  @Test
  void soundOneIsRead() throws IOException {
    assertEquals("Plate to head", answer(sound()));
  }

  @Test
  void deepNestingIsRefused() throws IOException {
    assertEquals("t.json: " + TOO_MUCH, answer("[".repeat(100_000)));
    assertEquals("t.json: " + TOO_MUCH, answer("{\"a\":".repeat(100_000)));
  }

  @Test
  void endlessNumbersAndTextsAreRefused() throws IOException {
    assertEquals(
        "t.json: `confidence` is Infinity, and not a share from 0.5 to 0.9999, such as 0.95 for 95 %"
            + UNCHANGED,
        answer("\"confidence\": [0-9.]+", "\"confidence\": 1e999999"));
    assertEquals(
        "t.json: " + TOO_MUCH,
        answer("\"confidence\": [0-9.]+", "\"confidence\": " + "9".repeat(1_000_000)));
    assertEquals("t.json: " + TOO_MUCH, answer("[\"" + "x".repeat(1_000_000) + "\"]"));
    assertEquals("t.json: " + TOO_MUCH, answer("{\"" + "x".repeat(60_000) + "\":1}"));
  }

  @Test
  void moreBandsThanThereAreIsRefused() throws IOException {
    String not = "t.json: `grid` is not one that a study can have" + UNCHANGED;
    assertEquals(not, answer("\"bands\": \\d+", "\"bands\": 10000"));
    assertEquals(not, answer("\"first_band\": -?\\d+", "\"first_band\": -11"));
    assertEquals(not, answer("\"per_octave\": \\d+", "\"per_octave\": 2"));
    String whole = " must be a whole number from ";
    assertEquals(
        "t.json: `grid.bands`" + whole + "1 to 10000" + UNCHANGED,
        answer("\"bands\": \\d+", "\"bands\": 2147483647"));
    assertEquals(
        "t.json: `grid.first_band`" + whole + "-10000 to 10000" + UNCHANGED,
        answer("\"first_band\": -?\\d+", "\"first_band\": 2147483647"));
  }

  @Test
  void otherTextIsRefused() throws IOException {
    assertEquals(
        "t.json: `format` is not \"twinrig-translation\"; give the translation.json that `twinrig study`"
            + " wrote",
        answer(""));
    assertEquals(
        "t.json:1: holds a zero byte: the file is UTF-16 text or no text at all; save it as UTF-8",
        answer("\u0000"));
    assertEquals(
        "t.json:1: this is not JSON: Non-standard token 'NaN'" + UNCHANGED, answer("{\"a\": NaN}"));
    assertEquals(
        "t.json:1: this is not JSON: Duplicate field 'a'" + UNCHANGED, answer("{\"a\":1,\"a\":2}"));
    assertEquals("Plate to head", answer("\uFEFF" + sound().replace("\n", "\r\n")));
  }
}
