package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Captures with a few lines amiss are used, and what was left out is said. */
class UsableCaptureTest {
  @TempDir Path temp;

  /** From 100 Hz in steps of 100 Hz, 80.25 dB and more. */
  private static List<String> sound() {
    List<String> lines = new ArrayList<>();
    for (int k = 1; k <= 40; k++) {
      lines.add(String.format(Locale.ROOT, "%d.00\t%.2f", 100 * k, 80 + k / 4.0));
    }
    return lines;
  }

  private Reading read(String text) throws IOException, UnusableInput {
    return CaptureFile.read(Files.writeString(temp.resolve("c.txt"), text), "c.txt");
  }

  private static String notes(Reading reading) {
    return reading.notes().stream().map(Problem::text).collect(Collectors.joining("\n"));
  }

  @Test
  void aFewLinesWithoutALevelAreLeftOut() throws IOException, UnusableInput {
    List<String> lines = sound();
    lines.set(3, "400.00\tNaN");
    lines.set(20, "2100.00\t");
    Reading read = read(String.join("\n", lines) + "\n");
    assertEquals(38, read.response().size());
    assertEquals("c.txt:4: this and 1 other line have no level and were left out", notes(read));
    lines.set(20, "2100.00\t85.25");
    assertEquals(
        "c.txt:4: this line has no level and was left out",
        notes(read(String.join("\n", lines) + "\n")));
  }

  /** More than a tenth says that the file is not what it seems; silence is no gap. */
  @Test
  void manyLinesWithoutALevelAreRefused() {
    List<String> lines = sound();
    for (int k = 3; k < 8; k++) {
      lines.set(k, 100 * (k + 1) + ".00\tNaN");
    }
    assertEquals(
        "c.txt:4: the level is 'NaN', which is no number; leave the line out, or measure again",
        assertThrows(UnusableInput.class, () -> read(String.join("\n", lines) + "\n"))
            .getMessage());
    List<String> silent = sound();
    silent.set(3, "400.00\t-inf");
    assertThrows(UnusableInput.class, () -> read(String.join("\n", silent) + "\n"));
  }

  /** With a level cut to `9` the last point would be 80 dB off. */
  @Test
  void aLastLineCutShortIsLeftOut() throws IOException, UnusableInput {
    String whole = String.join("\n", sound());
    for (int missing : new int[] {1, 2, 4, 5, 6, 8}) {
      Reading read = read(whole.substring(0, whole.length() - missing));
      assertEquals(39, read.response().size(), () -> missing + " letters missing");
      assertEquals("c.txt:40: the file ends within this line, which was left out", notes(read));
    }
    assertEquals("", notes(read(whole)));
    assertEquals(40, read(whole).response().size());
  }

  /** Where levels are written with as many digits as they have, the last may be whole. */
  @Test
  void aLastLineOfFewerDigitsIsNoCutWhereTheyDiffer() throws IOException, UnusableInput {
    Reading read = read("100\t80.25\n200\t80.5\n300\t81");
    assertEquals(3, read.response().size());
    assertEquals("", notes(read));
  }

  @Test
  void thousandsMarksAreReadWhereThereIsOneWayTo() throws IOException, UnusableInput {
    Reading read =
        read("Frequenz;Pegel (dB)\n20,00;85,3\n250,00;85,9\n1.000,00;86,2\n12.500,5;1\n");
    assertEquals(1000, read.response().frequencyHz(2));
    assertEquals(12_500.5, read.response().frequencyHz(3));
    assertEquals("c.txt:4: numbers have thousands marks here and in 1 other line", notes(read));
    assertEquals(1000.5, read("20.0\t1\n1,000.5\t2\n").response().frequencyHz(1));
  }
}
