package org.twinrig.intake;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The fields of one line, as ranges of the text without blanks and quotes around them. Columns
 * count from 1. One object serves line after line, so that reading a line makes no garbage.
 *
 * <p>A CSV reader would not do: the free text that instruments write above the numbers is no CSV,
 * and a lone inch sign in it would open a quotation that swallows the curve.
 */
final class Fields {
  private char[] chars = {};
  private int[] bounds = new int[16];
  private int count;

  void cut(char[] text, int from, int to, Separator separator) {
    chars = text;
    count = 0;
    int at = from;
    if (separator == Separator.SPACES) {
      for (at = skipBlanks(at, to); at < to; at = skipBlanks(at, to)) {
        at = addField(at, to, separator);
      }
      return;
    }
    while (at <= to) {
      at = addField(at, to, separator) + 1;
    }
  }

  /** Adds the field that starts here and answers where its separator stands. */
  private int addField(int from, int to, Separator separator) {
    int start = skipBlanks(from, to, separator);
    int closing = start < to && chars[start] == '"' ? closingQuote(start + 1, to) : -1;
    if (closing > 0) {
      int end = skipBlanks(closing, to, separator);
      if (end == to || separator.isAt(chars[end])) {
        addTrimmed(start + 1, closing - 1);
        return end;
      }
    }
    int end = start;
    while (end < to && !separator.isAt(chars[end])) {
      end++;
    }
    addTrimmed(start, end);
    return end;
  }

  /** Just behind the quote that closes, or -1 when none does; a doubled quote does not close. */
  private int closingQuote(int from, int to) {
    for (int i = from; i < to; i++) {
      if (chars[i] == '"') {
        if (i + 1 == to || chars[i + 1] != '"') {
          return i + 1;
        }
        i++;
      }
    }
    return -1;
  }

  private void addTrimmed(int from, int to) {
    int start = skipBlanks(from, to);
    int end = to;
    while (start < end && Lines.isBlank(chars[end - 1])) {
      end--;
    }
    if (2 * count == bounds.length) {
      bounds = Arrays.copyOf(bounds, 2 * bounds.length);
    }
    bounds[2 * count] = start;
    bounds[2 * count + 1] = end;
    count++;
  }

  /** Skips blanks that do not part fields. */
  private int skipBlanks(int from, int to, Separator separator) {
    int at = from;
    while (at < to && Lines.isBlank(chars[at]) && !separator.isAt(chars[at])) {
      at++;
    }
    return at;
  }

  private int skipBlanks(int from, int to) {
    int at = from;
    while (at < to && Lines.isBlank(chars[at])) {
      at++;
    }
    return at;
  }

  /** How many fields there are, empty ones included. */
  int count() {
    return count;
  }

  /** The last column that is not empty, or 0. */
  int filled() {
    int last = count;
    while (last > 0 && isEmpty(last)) {
      last--;
    }
    return last;
  }

  boolean isEmpty(int column) {
    return from(column) == to(column);
  }

  private int from(int column) {
    return bounds[2 * column - 2];
  }

  private int to(int column) {
    return bounds[2 * column - 1];
  }

  boolean isLooseNumber(int column) {
    return column <= count && NumberText.isLoose(chars, from(column), to(column));
  }

  /** Whether a field holds a number, or says that there is none. */
  boolean saysNumber(int column) {
    return isLooseNumber(column) || NumberText.isMissing(text(column));
  }

  int looseNumbers() {
    int numbers = 0;
    for (int column = 1; column <= count; column++) {
      numbers += isLooseNumber(column) ? 1 : 0;
    }
    return numbers;
  }

  /** Whether these are two numbers or more, and no field is left to be cut into numbers. */
  boolean areParted() {
    boolean parted = looseNumbers() >= 2;
    for (int column = 1; column <= count && parted; column++) {
      int first = skipInk(from(column), to(column));
      int second = skipBlanks(first, to(column));
      parted =
          !NumberText.isLoose(chars, from(column), first)
              || !NumberText.isLoose(chars, second, skipInk(second, to(column)));
    }
    return parted;
  }

  private int skipInk(int from, int to) {
    int at = from;
    while (at < to && !Lines.isBlank(chars[at])) {
      at++;
    }
    return at;
  }

  /** The field as it stands; empty when it is in quotes or there is none. */
  String unquoted(int column) {
    return column <= count && from(column) > 0 && chars[from(column) - 1] == '"'
        ? ""
        : text(column);
  }

  /** The number in a column, or NaN when it holds none. */
  double number(int column, NumberText text) {
    return column <= count ? text.parse(chars, from(column), to(column)) : Double.NaN;
  }

  /** The field as the file has it, a doubled quote taken as one; empty when there is none. */
  String text(int column) {
    return column <= count
        ? new String(chars, from(column), to(column) - from(column)).replace("\"\"", "\"")
        : "";
  }

  /** The fields up to the last that is not empty. */
  List<String> texts() {
    return IntStream.rangeClosed(1, filled()).mapToObj(this::text).toList();
  }
}
