package org.twinrig.intake;

import java.util.Arrays;
import java.util.Locale;
import org.twinrig.intake.Layout.LineEnds;
import org.twinrig.problem.UnusableInput;

/** Where lines start and end in a text. Lines count from 1, as in messages. */
final class Lines {
  /** Ends a text file on systems of the 1980s, which some instruments still imitate. */
  private static final char OLD_END_OF_FILE = 0x1A;

  /** A transform of two million samples has as many lines; more is a mix-up of files. */
  static final int MOST = 1 << 20;

  private final char[] chars;
  private int[] bounds = new int[1024];
  private int count;
  private LineEnds ends = LineEnds.LF;
  private boolean endSeen;

  private Lines(char[] chars) {
    this.chars = chars;
  }

  static Lines of(char[] chars, Remarks remarks) throws UnusableInput {
    Lines lines = new Lines(chars);
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
        lines.add(start, i);
        if (lines.count > MOST) {
          throw remarks.refuse(
              lines.count,
              "the file goes on after " + MOST + " lines, which are the most that are read",
              "export this one curve with fewer points");
        }
        boolean pair = c == '\r' && i + 1 < length && chars[i + 1] == '\n';
        lines.see(pair ? LineEnds.CRLF : c == '\n' ? LineEnds.LF : LineEnds.CR);
        i += pair ? 1 : 0;
        start = i + 1;
      } else if (c != '\f' && c != 0x0B) {
        throw remarks.refuse(
            lines.count + 1,
            String.format(
                Locale.ROOT, "there is a control character (code %d): this is not text", (int) c),
            "export the curve as text");
      }
    }
    if (start < length) {
      lines.add(start, length);
    }
    return lines;
  }

  private void add(int from, int to) {
    if (2 * count == bounds.length) {
      bounds = Arrays.copyOf(bounds, 2 * bounds.length);
    }
    bounds[2 * count] = from;
    bounds[2 * count + 1] = to;
    count++;
  }

  private void see(LineEnds end) {
    ends = !endSeen || ends == end ? end : LineEnds.MIXED;
    endSeen = true;
  }

  int count() {
    return count;
  }

  LineEnds ends() {
    return ends;
  }

  /** The text itself, not a copy; {@link #from} and {@link #to} point into it. */
  char[] chars() {
    return chars;
  }

  int from(int line) {
    return bounds[2 * line - 2];
  }

  int to(int line) {
    return bounds[2 * line - 1];
  }

  String text(int line) {
    return new String(chars, from(line), to(line) - from(line));
  }

  /** Blanks inside a line, with those that stand for a space in other scripts and locales. */
  static boolean isBlank(char c) {
    return c <= ' ' || c == '\u00A0' || c == '\u202F' || c == '\u2009' || c == '\u3000';
  }
}
