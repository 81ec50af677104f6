package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.problem.UnusableInput;

/** The same text in every encoding; the byte-order mark is U+FEFF (Unicode standard, 23.8). */
class TextEncodingTest {
  private static final String TEXT =
      "# Schalldämpfung, 20 µPa\r\nFréquence (Hz);Niveau (dB)\r\n20;85,3\r\n200;85,9\r\n";

  private record Encoded(String encoding, Charset charset, boolean byteOrderMark) {}

  static Stream<Encoded> encodings() {
    return Stream.of(
        new Encoded("UTF-8", StandardCharsets.UTF_8, false),
        new Encoded("UTF-8", StandardCharsets.UTF_8, true),
        new Encoded("Latin-1", StandardCharsets.ISO_8859_1, false),
        new Encoded("UTF-16, low byte first", StandardCharsets.UTF_16LE, false),
        new Encoded("UTF-16, low byte first", StandardCharsets.UTF_16LE, true),
        new Encoded("UTF-16, high byte first", StandardCharsets.UTF_16BE, false),
        new Encoded("UTF-16, high byte first", StandardCharsets.UTF_16BE, true));
  }

  @ParameterizedTest
  @MethodSource("encodings")
  void sameTextIsTheSameCurve(Encoded encoded) throws UnusableInput {
    String text = (encoded.byteOrderMark() ? "\uFEFF" : "") + TEXT;
    Reading reading = CaptureBytes.read(text.getBytes(encoded.charset()));
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(
        "The text is "
            + encoded.encoding()
            + (encoded.byteOrderMark() ? " with a byte-order mark" : "")
            + "; lines end with CR LF.",
        reading.understood().get(1));
    assertEquals(
        "Columns are parted by semicolons, with decimal commas: column 1 'Fréquence (Hz)' is the"
            + " frequency in Hz, column 2 'Niveau (dB)' the level in dB.",
        reading.understood().get(2));
  }

  @Test
  void titlesInOtherScriptsAreFoundInUtf16WithoutMark() throws UnusableInput {
    String text = "周波数;音圧レベル\n20;85.3\n200;85.9\n2000;86.2\n";
    Reading reading = CaptureBytes.read(text.getBytes(StandardCharsets.UTF_16BE));
    assertEquals(
        "The text is UTF-16, high byte first; lines end with LF.", reading.understood().get(1));
    assertEquals(
        "Columns are parted by semicolons, with decimal points: column 1 '周波数' is the"
            + " frequency in Hz, column 2 '音圧レベル' the level in dB.",
        reading.understood().get(2));
  }

  @Test
  void brokenUtf8BehindItsMarkIsNoted() throws UnusableInput {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(new byte[] {(byte) 0xef, (byte) 0xbb, (byte) 0xbf, '#', (byte) 0xe4, '\n'});
    bytes.writeBytes("20;85.3\n200;85.9\n".getBytes(StandardCharsets.UTF_8));
    assertEquals(
        "capture.txt: some characters are not valid UTF-8 and were not understood",
        CaptureBytes.notes(CaptureBytes.read(bytes.toByteArray())));
  }
}
