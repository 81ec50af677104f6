package org.twinrig.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.internal.OrdinaryFile;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Reads the text files a lab writes by hand: UTF-8, with or without a byte-order mark. */
public final class Utf8File {
  private static final String SAVE_AS = "save it as UTF-8";

  private Utf8File() {}

  /**
   * The whole text of a file.
   *
   * @param source how problems name it
   * @param mostBytes the largest size that is believable for such a file
   * @return the text without byte-order mark
   * @throws UnusableInput when it cannot be read, is larger, is a spreadsheet, is UTF-16 or UTF-32,
   *     or holds a byte that is not UTF-8 (with its line)
   */
  public static String read(Path file, String source, int mostBytes) throws UnusableInput {
    byte[] bytes = bytes(file, source, mostBytes);
    Optional<Problem> spreadsheet = ForeignContent.spreadsheet(bytes, source);
    if (spreadsheet.isPresent()) {
      throw new UnusableInput(spreadsheet.get());
    }
    refuseWideText(bytes, source);
    int start = hasUtf8Mark(bytes) ? 3 : 0;
    ByteBuffer input = ByteBuffer.wrap(bytes, start, bytes.length - start);
    CharBuffer text = CharBuffer.allocate(bytes.length - start + 1);
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CoderResult result = decoder.decode(input, text, true);
    if (result.isError()) {
      throw notUtf8(bytes, input.position(), source);
    }
    return text.flip().toString();
  }

  private static byte[] bytes(Path file, String source, int mostBytes) throws UnusableInput {
    try {
      OrdinaryFile found = OrdinaryFile.at(file);
      if (found.size() > mostBytes) {
        throw unusable(
            source,
            0,
            String.format(
                Locale.ROOT,
                "is %d bytes long, but at most %d are believable",
                found.size(),
                mostBytes),
            "check that this is the file you mean");
      }
      return found.bytes();
    } catch (OrdinaryFile.NotOrdinaryException e) {
      throw unusable(source, 0, "is " + e.what(), "name a file");
    } catch (NoSuchFileException e) {
      throw unusable(source, 0, "there is no such file", "check its name and folder");
    } catch (IOException e) {
      String why = e.getMessage() == null ? "no reason given" : e.getMessage();
      throw unusable(source, 0, "cannot be read (" + why + ")", "check the file's permissions");
    }
  }

  /** Text in two or four bytes a letter shows itself by its mark or by zero bytes. */
  private static void refuseWideText(byte[] bytes, String source) throws UnusableInput {
    boolean marked = bytes.length >= 2 && ((bytes[0] & 0xFF) ^ (bytes[1] & 0xFF)) == 1;
    if (marked && (bytes[0] & 0xFF) >= 0xFE) {
      throw unusable(source, 0, "is UTF-16 text", SAVE_AS);
    }
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == 0) {
        throw unusable(
            source,
            line(bytes, i),
            "holds a zero byte: the file is UTF-16 text or no text at all",
            SAVE_AS);
      }
    }
  }

  private static boolean hasUtf8Mark(byte[] bytes) {
    return bytes.length >= 3
        && (bytes[0] & 0xFF) == 0xEF
        && (bytes[1] & 0xFF) == 0xBB
        && (bytes[2] & 0xFF) == 0xBF;
  }

  private static UnusableInput notUtf8(byte[] bytes, int position, String source) {
    return unusable(
        source,
        line(bytes, position),
        String.format(
            Locale.ROOT, "byte 0x%02X does not belong in UTF-8 text", bytes[position] & 0xFF),
        SAVE_AS);
  }

  private static int line(byte[] bytes, int position) {
    int line = 1;
    for (int i = 0; i < position; i++) {
      if (bytes[i] == '\n') {
        line++;
      }
    }
    return line;
  }

  private static UnusableInput unusable(String source, int line, String what, String remedy) {
    return new UnusableInput(Problem.fatal(source, line, what, remedy));
  }
}
