package org.twinrig.intake;

import java.util.Arrays;
import java.util.Locale;
import org.twinrig.problem.UnusableInput;

/**
 * Where lines start and end in a text, and what sort each is, before anything is known about
 * separator and decimal mark. Lines count from 1, as in messages.
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

  /** Ends a text file on systems of the 1980s, which some instruments still imitate. */
  private static final char OLD_END_OF_FILE = 0x1A;

  private static final NumberText WITH_POINT = new NumberText('.', 0);

  private final char[] chars;
  private final Fields fields = new Fields();
  private int[] bounds = new int[1024];
  private int count;
  private String ends = "";

  Lines(String text, Remarks remarks) throws UnusableInput {
    chars = text.toCharArray();
    int length = chars.length;
    while (length > 0 && chars[length - 1] == OLD_END_OF_FILE) {
      length--;
    }
    int start = 0;
    for (int i = 0; i < length; i++) {
      char c = chars[i];
      if (c >= ' ' || c == '\t') {
        continue;
      }
      if (c == '\n' || c == '\r') {
        add(start, i);
        if (count > MOST) {
          throw remarks.refuse(
              count,
              "the file goes on after " + MOST + " lines, which are the most that are read",
              "export this one curve with fewer points");
        }
        boolean pair = c == '\r' && i + 1 < length && chars[i + 1] == '\n';
        see(pair ? "CR LF" : c == '\n' ? "LF" : "CR");
        i += pair ? 1 : 0;
        start = i + 1;
      } else if (c != '\f' && c != 0x0B) {
        throw remarks.refuse(
            count + 1,
            String.format(
                Locale.ROOT, "there is a control character (code %d): this is not text", (int) c),
            "export the curve as text");
      }
    }
    if (start < length) {
      add(start, length);
    }
  }

  private void add(int from, int to) {
    if (2 * count == bounds.length) {
      bounds = Arrays.copyOf(bounds, 2 * bounds.length);
    }
    bounds[2 * count] = from;
    bounds[2 * count + 1] = to;
    count++;
  }

  private void see(String end) {
    ends = ends.isEmpty() || ends.equals(end) ? end : "LF, CR LF or CR, mixed";
  }

  int count() {
    return count;
  }

  /** What ends a line, in words. */
  String ends() {
    return ends.isEmpty() ? "LF" : ends;
  }

  /** Cuts a line into fields, which are given back. */
  Fields cut(int line, Separator separator, Fields into) {
    into.cut(chars, from(line), to(line), separator);
    return into;
  }

  String text(int line) {
    return new String(chars, from(line), to(line) - from(line));
  }

  /** A line inside a message. */
  String excerpt(int line) {
    return Remarks.excerpt(text(line));
  }

  private int from(int line) {
    return bounds[2 * line - 2];
  }

  private int to(int line) {
    return bounds[2 * line - 1];
  }

  Shape shape(int line) {
    int to = to(line);
    int first = firstInk(line);
    if (isSeparatorsOnly(first, to)) {
      return Shape.BLANK;
    }
    if (isCommentMark(first, to)) {
      return Shape.COMMENT;
    }
    return startsWithNumber(first, to) || holdsTwoNumbers(line) ? Shape.NUMBERS : Shape.TEXT;
  }

  /** The same answer for the two commonest reasons to pass over a line. */
  boolean isBlankOrComment(int line) {
    int first = firstInk(line);
    return isSeparatorsOnly(first, to(line)) || isCommentMark(first, to(line));
  }

  /** An empty row, as spreadsheets write it. */
  private boolean isSeparatorsOnly(int from, int to) {
    int at = from;
    while (at < to && endsWord(chars[at])) {
      at++;
    }
    return at == to;
  }

  /** The first character that is neither blank nor an opening quote. */
  private int firstInk(int line) {
    int first = from(line);
    while (first < to(line) && (isBlank(chars[first]) || chars[first] == '"')) {
      first++;
    }
    return first;
  }

  private boolean isCommentMark(int at, int to) {
    return switch (chars[at]) {
      case '#', '*', ';', '%', '!' -> true;
      case '/' -> at + 1 < to && chars[at + 1] == '/';
      default -> false;
    };
  }

  private boolean startsWithNumber(int first, int to) {
    int start = first;
    while (start < to && chars[start] == ',') {
      start++;
    }
    int end = start;
    while (end < to && !endsWord(chars[end])) {
      end++;
    }
    return WITH_POINT.isNumber(chars, start, end);
  }

  private static boolean endsWord(char c) {
    return isBlank(c) || c == ',' || c == ';' || c == '"';
  }

  private boolean holdsTwoNumbers(int line) {
    for (Separator separator : Separator.values()) {
      if (separator != Separator.SPACES) {
        cut(line, separator, fields);
        if (fields.looseNumbers() >= 2) {
          return true;
        }
      }
    }
    return false;
  }

  /** Blanks inside a line, with those that stand for a space in other scripts and locales. */
  static boolean isBlank(char c) {
    return c <= ' ' || c == '\u00A0' || c == '\u202F' || c == '\u2009' || c == '\u3000';
  }
}
