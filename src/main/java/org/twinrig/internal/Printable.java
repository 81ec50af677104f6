package org.twinrig.internal;

import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Letters that may stand in a line on a terminal or a page. Names of files and what is quoted from
 * them may hold anything: control characters and those that turn the direction of writing (Unicode
 * general categories Cc, Cf, Zl, Zp) or are half of a letter (Cs) would move the cursor, colour the
 * screen or hide what follows.
 */
public final class Printable {
  private Printable() {}

  /**
   * A text on one line, with tabs and line feeds as blanks and a question mark for what cannot be
   * shown.
   */
  public static String line(String text) {
    int[] shown =
        text.codePoints()
            .map(letter -> letter == '\t' || letter == '\n' ? ' ' : isShown(letter) ? letter : '?')
            .toArray();
    return new String(shown, 0, shown.length);
  }

  /**
   * A whole and valid JSON text with what cannot be shown, which stands in its strings only,
   * escaped; read again, it is the same.
   */
  public static String json(String json) {
    return json.codePoints()
        .mapToObj(
            letter ->
                isShown(letter) || letter < ' '
                    ? Character.toString(letter)
                    : Character.toString(letter)
                        .chars()
                        .mapToObj(unit -> String.format(Locale.ROOT, "\\u%04x", unit))
                        .collect(Collectors.joining()))
        .collect(Collectors.joining());
  }

  /** Whether a letter may be shown: false for those above, tabs and line feeds included. */
  public static boolean isShown(int letter) {
    return switch (Character.getType(letter)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          false;
      default -> true;
    };
  }
}
