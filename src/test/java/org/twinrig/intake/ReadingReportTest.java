package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;

/** What a person reads about a file, word by word. */
class ReadingReportTest {
  @Test
  void saysHowAPlainFileWasUnderstood() throws UnusableInput {
    assertEquals(
        """
        capture.txt
          A curve of 3 points from 20 Hz to 2 kHz, with levels from 85.3 dB to 86.2 dB.
          The text is UTF-8; lines end with LF.
          Columns are parted by tabs, with decimal points: column 1 is the frequency in Hz, column 2 the level in dB.
          Every line holds a point.
          SHA-256 8ae29d31a420401beda72aa73fa3e34e24879438e86834981b2c0dbff4d44852
        """,
        CaptureBytes.read("20\t85.3\n200\t85.9\n2000\t86.2\n").report());
  }

  @Test
  void saysEverythingAboutAnOddFile() throws UnusableInput {
    String text =
        """
        # Alder 3

        Pegel (dB);Frequenz (kHz);Phase (Grad);Kohärenz
        86,25;2;9;1
        # Pause
        85,9;0,2;8;1
        85,25;0,02;7;1
        85,9;0;6;1
        Ende
        """;
    byte[] bytes = text.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_16LE);
    assertEquals(
        """
        capture.txt
          A curve of 3 points from 20 Hz to 2 kHz, with levels from 85.2 dB to 86.2 dB; in the file the frequencies fall.
          The text is UTF-16, low byte first; lines end with CR LF.
          Columns are parted by semicolons, with decimal commas: column 2 'Frequenz (kHz)' is the frequency in kHz, column 1 'Pegel (dB)' the level in dB, column 3 'Phase (Grad)' the phase.
          Lines without a point: 1 (comment), 2 (blank), 3 (header), 5 (comment), 9 (text after the numbers).
          Note: the frequencies fall; the points were put in rising order.
          Note on line 3: column 4 'Kohärenz' was not used.
          Note on line 3: the frequencies are in kHz and were converted to Hz.
          Note on line 8: the point at 0 Hz was left out.
          Note on line 9: the text after the numbers was left out.
          SHA-256 681132da09abf4a849b7b3945b8a1df375a6de5e36ed7dcb4a0c8cf81eef9ee1
        """,
        CaptureBytes.read(bytes).report());
  }

  @Test
  void saysWhyAFileWasRefused() {
    UnusableInput refusal =
        assertThrows(UnusableInput.class, () -> CaptureBytes.read("20;85.3\n200;8S.9\n"));
    assertEquals(
        "capture.txt:2: the level '8S.9' is not a number; write a bare number such as"
            + " 1000.5, or start the line with # if it is a remark",
        refusal.getMessage());
  }
}
