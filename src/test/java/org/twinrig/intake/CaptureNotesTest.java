package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;

/** What is used although it is odd, and the note that says so. */
class CaptureNotesTest {
  @Test
  void plainFileHasNoNotes() throws UnusableInput {
    Reading reading = CaptureBytes.read("Frequency (Hz),Level (dB)\n20,85.3\n200,85.9\n");
    assertEquals(List.of(), reading.notes());
    assertEquals("capture.txt", reading.source());
    assertEquals(
        List.of(
            "A curve of 2 points from 20 Hz to 200 Hz, with levels from 85.3 dB to 85.9 dB.",
            "The text is UTF-8; lines end with LF.",
            "Columns are parted by commas, with decimal points: column 1 'Frequency (Hz)' is the"
                + " frequency in Hz, column 2 'Level (dB)' the level in dB.",
            "Lines without a point: 1 (header)."),
        reading.understood());
  }

  @Test
  void fallingFrequenciesAreReversed() throws UnusableInput {
    Reading reading = CaptureBytes.read("2000 86.2\n200 85.9\n20 85.3\n");
    assertEquals("20:85.3 200:85.9 2000:86.2", CaptureBytes.points(reading));
    assertEquals(
        "A curve of 3 points from 20 Hz to 2 kHz, with levels from 85.3 dB to 86.2 dB; in the file"
            + " the frequencies fall.",
        reading.understood().get(0));
    assertEquals(
        "capture.txt: the frequencies fall; the points were put in rising order",
        CaptureBytes.notes(reading));
  }

  @Test
  void repeatedPointIsKeptOnce() throws UnusableInput {
    Reading reading = CaptureBytes.read("20 85.3\n200 85.9\n200 85.90\n2000 86.2\n");
    assertEquals("20:85.3 200:85.9 2000:86.2", CaptureBytes.points(reading));
    assertEquals(4, reading.points());
    assertEquals(
        "capture.txt:3: this point repeats the one before and was left out",
        CaptureBytes.notes(reading));
  }

  @Test
  void severalRepeatedPointsMakeOneNote() throws UnusableInput {
    Reading reading = CaptureBytes.read("20 85.3\n20 85.3\n20 85.3\n2000 86.2\n2000 86.2\n");
    assertEquals("20:85.3 2000:86.2", CaptureBytes.points(reading));
    assertEquals(
        "capture.txt:2: this and 2 other points repeat the one before and were left out",
        CaptureBytes.notes(reading));
  }

  @Test
  void pointAtZeroHertzIsLeftOutWhateverItsLevel() throws UnusableInput {
    for (String level : List.of("-31.5", "-inf", "NaN")) {
      Reading reading = CaptureBytes.read("Hz,dB\n0," + level + "\n20,85.3\n200,85.9\n");
      assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
      assertEquals(3, reading.points());
      assertEquals("capture.txt:2: the point at 0 Hz was left out", CaptureBytes.notes(reading));
    }
  }

  @Test
  void kilohertzKeepTheirPrintedDigits() throws UnusableInput {
    // 1.001 * 1000 is 1000.9999999999999 in floating point; the decimal shift gives 1001.
    Reading reading = CaptureBytes.read("f (kHz);dB\n0.02;85.3\n1.001;85.9\n20.0;86\n");
    assertEquals("20:85.3 1001:85.9 20000:86", CaptureBytes.points(reading));
    assertEquals(
        "Columns are parted by semicolons, with decimal points: column 1 'f (kHz)' is the frequency"
            + " in kHz, column 2 'dB' the level in dB.",
        reading.understood().get(2));
    assertEquals(
        "capture.txt:1: the frequencies are in kHz and were converted to Hz",
        CaptureBytes.notes(reading));
  }

  @Test
  void columnsThatAreNotNeededAreNamed() throws UnusableInput {
    Reading reading =
        CaptureBytes.read("No;Hz;dB;Phase (deg);Coherence\n1;20;85.3;9;1\n2;200;85.9;8;0.9\n");
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(
        "Columns are parted by semicolons, with decimal points: column 2 'Hz' is the frequency in"
            + " Hz, column 3 'dB' the level in dB, column 4 'Phase (deg)' the phase.",
        reading.understood().get(2));
    assertEquals(
        "capture.txt:1: columns 1 'No', 5 'Coherence' were not used", CaptureBytes.notes(reading));
  }

  @Test
  void columnTitledWithTheCurvesNameIsTheLevel() throws UnusableInput {
    Reading reading = CaptureBytes.read("Frequency (Hz),Alder 3 L\n20,85.3\n200,85.9\n");
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(
        "capture.txt:1: column 2 'Alder 3 L' was taken as the level", CaptureBytes.notes(reading));
  }

  @Test
  void columnOfUnknownTitleBeforeTheLevelIsTheFrequency() throws UnusableInput {
    Reading reading = CaptureBytes.read("x,Level (dB)\n20,85.3\n200,85.9\n");
    assertEquals(
        "capture.txt:1: column 1 'x' was taken as the frequency", CaptureBytes.notes(reading));
  }

  @Test
  void thirdColumnWithoutTitleIsThePhase() throws UnusableInput {
    Reading reading = CaptureBytes.read("20 85.3 -12.5 1\n200 85.9 3 1\n");
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(
        "capture.txt: column 3 has no title; it was taken as the phase, which is not used\n"
            + "capture.txt: column 4 was not used",
        CaptureBytes.notes(reading));
  }

  @Test
  void textBelowTheNumbersIsLeftOut() throws UnusableInput {
    Reading reading = CaptureBytes.read("20 85.3\n200 85.9\nend of data\n\nmean: 85.6\n");
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(
        "Lines without a point: 3 to 5 (text after the numbers).", reading.understood().get(3));
    assertEquals(
        "capture.txt:3: the text after the numbers was left out", CaptureBytes.notes(reading));
  }

  @Test
  void curveBelowFiftyHertzIsNotedWhenTheTitleSaysHertz() throws UnusableInput {
    Reading below = CaptureBytes.read("Frequency (Hz),Level (dB)\n5,85.3\n49.9,85.9\n");
    assertEquals("capture.txt: the highest frequency is only 49.9 Hz", CaptureBytes.notes(below));
    Reading at = CaptureBytes.read("5 85.3\n50 85.9\n");
    assertEquals("", CaptureBytes.notes(at));
  }

  @Test
  void smallLevelsAreLevelsWhenTheFileSaysDecibel() throws UnusableInput {
    assertEquals(
        "20:0.4 200:0.5",
        CaptureBytes.points(CaptureBytes.read("# gain in dB\n20 0.4\n200 0.5\n")));
    assertEquals("20:-0.4 200:0.5", CaptureBytes.points(CaptureBytes.read("20 -0.4\n200 0.5\n")));
    assertEquals("20:0.4 200:2", CaptureBytes.points(CaptureBytes.read("20 0.4\n200 2\n")));
  }

  @Test
  void levelsUpToThreeHundredDecibelsAreTaken() throws UnusableInput {
    assertEquals("20:-300 200:300", CaptureBytes.points(CaptureBytes.read("20 -300\n200 300.0\n")));
  }

  @Test
  void wholeNumbersPartedByCommasNeedTitlesOrSigns() throws UnusableInput {
    assertEquals(
        "20:85 200:86", CaptureBytes.points(CaptureBytes.read("Frequency,Level\n20,85\n200,86\n")));
    assertEquals("20:-3 200:4", CaptureBytes.points(CaptureBytes.read("20,-3\n200,4\n")));
  }

  @Test
  void decimalMarkMayAppearLate() throws UnusableInput {
    StringBuilder text = new StringBuilder();
    for (int hz = 100; hz < 200; hz++) {
      text.append(hz).append(";85\n");
    }
    Reading reading = CaptureBytes.read(text + "200,5;85,9\n");
    assertEquals(
        "Columns are parted by semicolons, with decimal commas: column 1 is the frequency in Hz,"
            + " column 2 the level in dB.",
        reading.understood().get(2));
    assertEquals(200.5, reading.response().toHz());
  }

  @Test
  void skippedLinesAreNumbered() throws UnusableInput {
    Reading reading =
        CaptureBytes.read("Alder 3\n\n# a\n# b\nHz;dB\n20;85.3\n\n200;85.9\n% c\n2000;86.2\n");
    assertEquals(
        "Lines without a point: 1 (header), 2 (blank), 3 to 4 (comment), 5 (header), 7 (blank),"
            + " 9 (comment).",
        reading.understood().get(3));
  }
}
