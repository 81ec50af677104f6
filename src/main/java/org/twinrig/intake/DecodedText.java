package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.twinrig.problem.UnusableInput;

/**
 * Which characters are these bytes. A byte-order mark decides; without one, zero bytes at every
 * second place tell UTF-16, and what is no valid UTF-8 is Latin-1.
 */
final class DecodedText {
  /** Enough bytes to see which places hold zeros. */
  private static final int LOOKED_AT = 2048;

  private final char[] chars;
  private final TextEncoding encoding;
  private final boolean byteOrderMark;

  private DecodedText(char[] chars, TextEncoding encoding, boolean byteOrderMark) {
    this.chars = chars;
    this.encoding = encoding;
    this.byteOrderMark = byteOrderMark;
  }

  static DecodedText of(byte[] bytes, Remarks remarks) throws UnusableInput {
    if (bytes.length == 0) {
      throw remarks.refuse(0, "the file is empty", "export the curve again");
    }
    var foreign = ForeignContent.in(bytes, remarks);
    if (foreign.isPresent()) {
      throw foreign.get();
    }
    if (startsWith(bytes, 0xef, 0xbb, 0xbf)) {
      return utf8WithMark(bytes, remarks);
    }
    if (startsWith(bytes, 0xff, 0xfe)) {
      return utf16(bytes, 2, TextEncoding.UTF_16LE, remarks);
    }
    if (startsWith(bytes, 0xfe, 0xff)) {
      return utf16(bytes, 2, TextEncoding.UTF_16BE, remarks);
    }
    return withoutMark(bytes, remarks);
  }

  private static DecodedText withoutMark(byte[] bytes, Remarks remarks) throws UnusableInput {
    double zeroFirst = shareOfZeros(bytes, 0);
    double zeroSecond = shareOfZeros(bytes, 1);
    // Digits, signs and blanks have a zero high byte; titles in other scripts need not have.
    if (zeroSecond > 0.4 && zeroFirst < 0.05) {
      return utf16(bytes, 0, TextEncoding.UTF_16LE, remarks);
    }
    if (zeroFirst > 0.4 && zeroSecond < 0.05) {
      return utf16(bytes, 0, TextEncoding.UTF_16BE, remarks);
    }
    if (isAscii(bytes)) {
      return new DecodedText(widened(bytes), TextEncoding.UTF_8, false);
    }
    try {
      CharBuffer strict = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return new DecodedText(strict.toString().toCharArray(), TextEncoding.UTF_8, false);
    } catch (CharacterCodingException e) {
      return new DecodedText(widened(bytes), TextEncoding.LATIN_1, false);
    }
  }

  private static DecodedText utf8WithMark(byte[] bytes, Remarks remarks) {
    String text = new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8);
    if (text.indexOf('\uFFFD') >= 0) {
      remarks.note(0, "some characters are not valid UTF-8 and were not understood");
    }
    return new DecodedText(text.toCharArray(), TextEncoding.UTF_8, true);
  }

  private static DecodedText utf16(
      byte[] bytes, int markBytes, TextEncoding encoding, Remarks remarks) throws UnusableInput {
    if (bytes.length % 2 != 0) {
      throw remarks.refuse(
          0, "the file is UTF-16 text cut off within a character", "copy or export it again");
    }
    String text = new String(bytes, markBytes, bytes.length - markBytes, encoding.charset());
    return new DecodedText(text.toCharArray(), encoding, markBytes > 0);
  }

  private static boolean startsWith(byte[] bytes, int... first) {
    if (bytes.length < first.length) {
      return false;
    }
    for (int i = 0; i < first.length; i++) {
      if ((bytes[i] & 0xff) != first[i]) {
        return false;
      }
    }
    return true;
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

  private static boolean isAscii(byte[] bytes) {
    for (byte b : bytes) {
      if (b < 0) {
        return false;
      }
    }
    return true;
  }

  /** Latin-1, and so ASCII, is the first 256 characters of Unicode. */
  private static char[] widened(byte[] bytes) {
    char[] chars = new char[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      chars[i] = (char) (bytes[i] & 0xff);
    }
    return chars;
  }

  /** The characters themselves, not a copy: they are only read from here on. */
  char[] chars() {
    return chars;
  }

  TextEncoding encoding() {
    return encoding;
  }

  boolean byteOrderMark() {
    return byteOrderMark;
  }
}
