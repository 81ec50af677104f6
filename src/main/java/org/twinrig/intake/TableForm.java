package org.twinrig.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;

/**
 * How a lab's table is written as text: what spreadsheets save. The letters are UTF-8, UTF-16 with
 * a byte-order mark, or else Windows-1252, of which Latin-1's letters are part; what stands between
 * cells is what cuts the header into most of the known names.
 *
 * @param markBytes how long the byte-order mark is; 0 without one
 * @param separator a comma, a semicolon or a tab
 */
record TableForm(Charset charset, int markBytes, char separator) {
  /** What separates cells, the usual one first. */
  private static final List<Character> SEPARATORS = List.of(',', ';', '\t');

  static TableForm of(byte[] bytes) {
    String begin = HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, 3));
    Charset charset =
        begin.startsWith("fffe")
            ? StandardCharsets.UTF_16LE
            : begin.startsWith("feff")
                ? StandardCharsets.UTF_16BE
                : DecodedText.isUtf8(bytes)
                    ? StandardCharsets.UTF_8
                    : Charset.forName("windows-1252");
    int mark = charset.name().startsWith("UTF-16") ? 2 : begin.equals("efbbbf") ? 3 : 0;
    TableForm commas = new TableForm(charset, mark, ',');
    String header =
        commas
            .text(bytes)
            .lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .findFirst()
            .orElse("");
    return new TableForm(charset, mark, separator(header));
  }

  private static char separator(String header) {
    Comparator<Character> often =
        Comparator.comparingLong(s -> header.chars().filter(c -> c == s).count());
    // Of separators that are there as often the first is taken.
    return SEPARATORS.stream()
        .reduce((first, next) -> often.compare(next, first) > 0 ? next : first)
        .orElseThrow();
  }

  /** The whole text, without byte-order mark. */
  String text(byte[] bytes) {
    return new String(bytes, markBytes, bytes.length - markBytes, charset);
  }

  /** Whether numbers may have a decimal comma: where commas do not separate cells. */
  boolean decimalCommas() {
    return separator != ',';
  }

  /** How it was understood, in words, where it is not UTF-8 with commas; else empty. */
  String readAs() {
    String letters =
        charset.equals(StandardCharsets.UTF_8)
            ? ""
            : isBytewise() ? "Latin-1 (Windows-1252)" : "UTF-16";
    String cells = separator == ',' ? "" : separator == ';' ? "semicolons" : "tabs";
    String between = cells.isEmpty() ? "" : cells + " between cells";
    return letters.isEmpty() || between.isEmpty() ? letters + between : letters + ", " + between;
  }

  /** Whether it has all letters of a text. */
  boolean canWrite(String text) {
    return charset.newEncoder().canEncode(text);
  }

  /** Whether it can be cut as single bytes. */
  boolean isBytewise() {
    return !charset.name().startsWith("UTF-16");
  }
}
