package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;

/**
 * Which characters are these bytes. A byte-order mark decides; without one, zero bytes at every
 * second place tell UTF-16, and what is no valid UTF-8 is Latin-1.
 *
 * @param encoding in words: for example {@code UTF-8 with a byte-order mark}
 */
record DecodedText(String text, String encoding) {
  /** Enough bytes to see which places hold zeros. */
  private static final int LOOKED_AT = 2048;

  private static final Map<Charset, String> WORDS =
      Map.of(
          StandardCharsets.UTF_8, "UTF-8",
          StandardCharsets.ISO_8859_1, "Latin-1",
          StandardCharsets.UTF_16LE, "UTF-16, low byte first",
          StandardCharsets.UTF_16BE, "UTF-16, high byte first");

  static DecodedText of(byte[] bytes, Remarks remarks) throws UnusableInput {
    if (bytes.length == 0) {
      throw remarks.refuse("the file is empty", "export the curve again");
    }
    Optional<ForeignContent> foreign = ForeignContent.in(bytes);
    if (foreign.isPresent()) {
      throw remarks.refuse(foreign.get().what(), foreign.get().remedy());
    }
    String begin = HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, 3));
    if (begin.equals("efbbbf")) {
      DecodedText decoded = decoded(bytes, 3, StandardCharsets.UTF_8);
      if (decoded.text().indexOf('\uFFFD') >= 0) {
        remarks.note(0, "some characters are not valid UTF-8 and were not understood");
      }
      return decoded;
    }
    if (begin.startsWith("fffe")) {
      return utf16(bytes, 2, StandardCharsets.UTF_16LE, remarks);
    }
    if (begin.startsWith("feff")) {
      return utf16(bytes, 2, StandardCharsets.UTF_16BE, remarks);
    }
    return withoutMark(bytes, remarks);
  }

  private static DecodedText withoutMark(byte[] bytes, Remarks remarks) throws UnusableInput {
    double zeroFirst = shareOfZeros(bytes, 0);
    double zeroSecond = shareOfZeros(bytes, 1);
    // Digits, signs and blanks have a zero high byte; titles in other scripts need not have.
    if (zeroSecond > 0.4 && zeroFirst < 0.05) {
      return utf16(bytes, 0, StandardCharsets.UTF_16LE, remarks);
    }
    if (zeroFirst > 0.4 && zeroSecond < 0.05) {
      return utf16(bytes, 0, StandardCharsets.UTF_16BE, remarks);
    }
    return decoded(bytes, 0, isUtf8(bytes) ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1);
  }

  static boolean isUtf8(byte[] bytes) {
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return true;
    } catch (CharacterCodingException e) {
      return false; // not a fault: it is then one of the others
    }
  }

  private static DecodedText utf16(byte[] bytes, int markBytes, Charset charset, Remarks remarks)
      throws UnusableInput {
    if (bytes.length % 2 != 0) {
      throw remarks.refuse(
          "the file is UTF-16 text cut off within a character", "copy or export it again");
    }
    return decoded(bytes, markBytes, charset);
  }

  private static DecodedText decoded(byte[] bytes, int markBytes, Charset charset) {
    return new DecodedText(
        new String(bytes, markBytes, bytes.length - markBytes, charset),
        WORDS.get(charset) + (markBytes > 0 ? " with a byte-order mark" : ""));
  }

  private static double shareOfZeros(byte[] bytes, int firstPlace) {
    int zeros = 0;
    int places = 0;
    for (int i = firstPlace; i < Math.min(bytes.length, LOOKED_AT); i += 2) {
      zeros += bytes[i] == 0 ? 1 : 0;
      places++;
    }
    return places == 0 ? 0 : (double) zeros / places;
  }
}
