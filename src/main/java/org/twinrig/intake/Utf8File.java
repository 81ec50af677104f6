package org.twinrig.intake;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.internal.OrdinaryFile;
import org.twinrig.problem.UnusableInput;

/** Reads the text files a lab writes by hand: UTF-8, with or without a byte-order mark. */
public final class Utf8File {
  private static final String SAVE_AS = "save it as UTF-8";

  private Utf8File() {}

  /**
   * The whole text of a file, without byte-order mark.
   *
   * @param source how problems name it
   * @param mostBytes the largest size that is believable for such a file
   * @throws UnusableInput when it cannot be read, is larger, is a spreadsheet, is UTF-16 or UTF-32,
   *     or holds a byte that is not UTF-8 (with its line)
   */
  public static String read(Path file, String source, int mostBytes) throws UnusableInput {
    byte[] bytes = bytes(file, source, mostBytes);
    refuseWhatIsNoText(bytes, source);
    String begin = HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, 3));
    int start = begin.equals("efbbbf") ? 3 : 0;
    ByteBuffer input = ByteBuffer.wrap(bytes, start, bytes.length - start);
    CharBuffer text = CharBuffer.allocate(bytes.length - start + 1);
    CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(input, text, true);
    if (result.isError()) {
      int at = input.position();
      throw UnusableInput.fatal(
          source,
          line(bytes, at),
          String.format(Locale.ROOT, "byte 0x%02X does not belong in UTF-8 text", bytes[at] & 0xFF),
          SAVE_AS);
    }
    return text.flip().toString();
  }

  /** Refuses spreadsheets, UTF-16 and what holds zero bytes. */
  static void refuseWhatIsNoText(byte[] bytes, String source) throws UnusableInput {
    Optional<ForeignContent> foreign = ForeignContent.in(bytes);
    if (foreign.isPresent() && foreign.get().isSpreadsheet()) {
      throw UnusableInput.fatal(source, 0, foreign.get().what(), foreign.get().remedy());
    }
    String begin = HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, 3));
    if (begin.startsWith("fffe") || begin.startsWith("feff")) {
      throw UnusableInput.fatal(source, 0, "is UTF-16 text", SAVE_AS);
    }
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == 0) {
        throw UnusableInput.fatal(
            source,
            line(bytes, i),
            "holds a zero byte: the file is UTF-16 text or no text at all",
            SAVE_AS);
      }
    }
  }

  static byte[] bytes(Path file, String source, int mostBytes) throws UnusableInput {
    try {
      OrdinaryFile found = OrdinaryFile.at(file);
      if (found.size() > mostBytes) {
        throw UnusableInput.fatal(
            source,
            0,
            "is " + found.size() + " bytes long, but at most " + mostBytes + " are believable",
            "check that this is the file you mean");
      }
      return found.bytes();
    } catch (OrdinaryFile.NotOrdinaryException e) {
      throw UnusableInput.fatal(source, 0, "is " + e.what(), "name a file");
    } catch (NoSuchFileException e) {
      throw UnusableInput.fatal(source, 0, "there is no such file", "check its name and folder");
    } catch (IOException e) {
      String why = e.getMessage() == null ? "no reason given" : e.getMessage();
      throw UnusableInput.fatal(
          source, 0, "cannot be read (" + why + ")", "check the file's permissions");
    }
  }

  private static int line(byte[] bytes, int position) {
    int line = 1;
    for (int i = 0; i < position; i++) {
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return line;
  }
}
