package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.intake.Layout.LineEnds;
import org.twinrig.problem.UnusableInput;

/** The same text in every encoding; the byte-order mark is U+FEFF (Unicode standard, 23.8). */
class TextEncodingTest {
  private static final String TEXT =
      "# Schalldämpfung, 20 µPa\r\nFréquence (Hz);Niveau (dB)\r\n20;85,3\r\n200;85,9\r\n";

  private record Encoded(TextEncoding encoding, Charset charset, boolean byteOrderMark) {}

  static Stream<Encoded> encodings() {
    return Stream.of(
        new Encoded(TextEncoding.UTF_8, StandardCharsets.UTF_8, false),
        new Encoded(TextEncoding.UTF_8, StandardCharsets.UTF_8, true),
        new Encoded(TextEncoding.LATIN_1, StandardCharsets.ISO_8859_1, false),
        new Encoded(TextEncoding.UTF_16LE, StandardCharsets.UTF_16LE, false),
        new Encoded(TextEncoding.UTF_16LE, StandardCharsets.UTF_16LE, true),
        new Encoded(TextEncoding.UTF_16BE, StandardCharsets.UTF_16BE, false),
        new Encoded(TextEncoding.UTF_16BE, StandardCharsets.UTF_16BE, true));
  }

  @ParameterizedTest
  @MethodSource("encodings")
  void sameTextIsTheSameCurve(Encoded encoded) throws UnusableInput {
    String text = (encoded.byteOrderMark() ? "\uFEFF" : "") + TEXT;
    Reading reading = CaptureBytes.read(text.getBytes(encoded.charset()));
    assertEquals("20:85.3 200:85.9", CaptureBytes.points(reading));
    assertEquals(encoded.encoding(), CaptureBytes.layout(reading).encoding());
    assertEquals(encoded.byteOrderMark(), CaptureBytes.layout(reading).byteOrderMark());
    assertEquals(LineEnds.CRLF, CaptureBytes.layout(reading).lineEnds());
    assertEquals("Fréquence (Hz)", CaptureBytes.layout(reading).columns().titles().get(0));
  }

  @Test
  void titlesInOtherScriptsAreFoundInUtf16WithoutMark() throws UnusableInput {
    String text = "周波数;音圧レベル\n20;85.3\n200;85.9\n2000;86.2\n";
    Reading reading = CaptureBytes.read(text.getBytes(StandardCharsets.UTF_16BE));
    assertEquals(TextEncoding.UTF_16BE, CaptureBytes.layout(reading).encoding());
    assertEquals("周波数", CaptureBytes.layout(reading).columns().titles().get(0));
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
