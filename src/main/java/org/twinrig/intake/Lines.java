package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import java.util.stream.Stream;
import org.twinrig.problem.UnusableInput;

/**
 * The lines of a text and what sort each is, before anything is known about separator and decimal
 * mark. Lines count from 1, as in messages.
 */
final class Lines {
  /** What sort of line this is. */
  enum Shape {
    BLANK,
    COMMENT,
    /** It starts with a number, or two of its fields are numbers. */
    NUMBERS,
    TEXT
  }

  /** A transform of two million samples has as many lines; more is a mix-up of files. */
  static final int MOST = 1 << 20;

  /** Blanks inside a line, with those that stand for a space in other scripts and locales. */
  static final String BLANK = "[\\x00- \u00A0\u202F\u2009\u3000]";

  /** Ends a text file on systems of the 1980s, which some instruments still imitate. */
  private static final char OLD_END_OF_FILE = 0x1A;

  private static final NumberText WITH_POINT = new NumberText('.', 0);

  private final List<String> lines = new ArrayList<>();
  private final boolean endsWithLine;
  private String ends = "";

  Lines(String text, Remarks remarks) throws UnusableInput {
    int length = text.length();
    while (length > 0 && text.charAt(length - 1) == OLD_END_OF_FILE) {
      length--;
    }
    int start = 0;
    for (int i = 0; i < length; i++) {
      char c = text.charAt(i);
      if (c >= ' ' || c == '\t') {
        continue;
      }
      if (c == '\n' || c == '\r') {
        lines.add(text.substring(start, i));
        if (count() > MOST) {
          throw remarks.refuse(
              count(),
              "the file goes on after " + MOST + " lines, which are the most that are read",
              "export this one curve with fewer points");
        }
        boolean pair = c == '\r' && i + 1 < length && text.charAt(i + 1) == '\n';
        see(pair ? "CR LF" : c == '\n' ? "LF" : "CR");
        i += pair ? 1 : 0;
        start = i + 1;
      } else if (c != '\f' && c != 0x0B) {
        throw remarks.refuse(
            count() + 1,
            String.format(
                Locale.ROOT, "there is a control character (code %d): this is not text", (int) c),
            "export the curve as text");
      }
    }
    endsWithLine = start == length;
    if (start < length) {
      lines.add(text.substring(start, length));
    }
  }

  private void see(String end) {
    ends = ends.isEmpty() || ends.equals(end) ? end : "LF, CR LF or CR, mixed";
  }

  int count() {
    return lines.size();
  }

  /** Whether the last line is ended as the others are. */
  boolean endsWithLine() {
    return endsWithLine;
  }

  /** What ends a line, in words. */
  String ends() {
    return ends.isEmpty() ? "LF" : ends;
  }

  String text(int line) {
    return lines.get(line - 1);
  }

  Fields cut(int line, Separator separator) {
    return Fields.of(text(line), separator);
  }

  /** A line inside a message. */
  String excerpt(int line) {
    return Remarks.excerpt(text(line));
  }

  Shape shape(int line) {
    String ink = ink(line);
    if (isSeparatorsOnly(ink)) {
      return Shape.BLANK;
    }
    if (isComment(ink)) {
      return Shape.COMMENT;
    }
    String first = ink.replaceFirst("^,+", "").split(BLANK + "|[,;\"]", 2)[0];
    boolean numbers =
        !Double.isNaN(WITH_POINT.parse(first))
            || Stream.of(Separator.values())
                .anyMatch(s -> s != Separator.SPACES && cut(line, s).looseNumbers() >= 2);
    return numbers ? Shape.NUMBERS : Shape.TEXT;
  }

  /** The same answer for the two commonest reasons to pass over a line. */
  boolean isBlankOrComment(int line) {
    String ink = ink(line);
    return isSeparatorsOnly(ink) || isComment(ink);
  }

  /** A line from the first character on that is neither blank nor an opening quote. */
  private String ink(int line) {
    return text(line).substring(skip(text(line), 0, c -> isBlank(c) || c == '"'));
  }

  /** An empty row, as spreadsheets write it. */
  private static boolean isSeparatorsOnly(String ink) {
    return ink.chars().allMatch(c -> isBlank(c) || ",;\"".indexOf(c) >= 0);
  }

  private static boolean isComment(String ink) {
    return "#*;%!".indexOf(ink.charAt(0)) >= 0 || ink.startsWith("//");
  }

  /** The place of the first character from here on that is none of these. */
  static int skip(String text, int from, IntPredicate these) {
    int at = from;
    while (at < text.length() && these.test(text.charAt(at))) {
      at++;
    }
    return at;
  }

  static boolean isBlank(int c) {
    return c <= ' ' || c == '\u00A0' || c == '\u202F' || c == '\u2009' || c == '\u3000';
  }
}
