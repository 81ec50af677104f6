package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * The fields of one line, without blanks and quotes around them. Columns count from 1.
 *
 * <p>A CSV reader would not do: the free text that instruments write above the numbers is no CSV,
 * and a lone inch sign in it would open a quotation that swallows the curve.
 *
 * @param all their texts, a doubled quote taken as one
 * @param quoted whether a quote stands right before each
 */
record Fields(List<String> all, List<Boolean> quoted) {

  static Fields of(String line, Separator separator) {
    Fields fields = new Fields(new ArrayList<>(), new ArrayList<>());
    boolean spaces = separator == Separator.SPACES;
    int at = spaces ? Lines.skip(line, 0, Lines::isBlank) : 0;
    while (spaces ? at < line.length() : at <= line.length()) {
      at = fields.add(line, at, separator) + 1;
      at = spaces ? Lines.skip(line, at, Lines::isBlank) : at;
    }
    return fields;
  }

  /** Adds the field that starts here and answers where its separator stands. */
  private int add(String line, int from, Separator separator) {
    // Blanks that do not part fields.
    IntPredicate inside = c -> Lines.isBlank(c) && !separator.isAt(c);
    int start = Lines.skip(line, from, inside);
    int closing = closingQuote(line, start);
    if (closing > 0) {
      int end = Lines.skip(line, closing, inside);
      if (end == line.length() || separator.isAt(line.charAt(end))) {
        quoted.add(!Lines.isBlank(line.charAt(start + 1)));
        all.add(trimmed(line.substring(start + 1, closing - 1)));
        return end;
      }
    }
    int end = Lines.skip(line, start, c -> !separator.isAt(c));
    quoted.add(false);
    all.add(trimmed(line.substring(start, end)));
    return end;
  }

  /** Just behind the quote that closes one here, or -1; a doubled quote does not close. */
  private static int closingQuote(String line, int opening) {
    for (int i = opening + 1; line.startsWith("\"", opening) && i < line.length(); i++) {
      if (line.charAt(i) == '"') {
        if (!line.startsWith("\"", i + 1)) {
          return i + 1;
        }
        i++;
      }
    }
    return -1;
  }

  private static String trimmed(String text) {
    int end = text.length();
    while (end > 0 && Lines.isBlank(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(Math.min(end, Lines.skip(text, 0, Lines::isBlank)), end)
        .replace("\"\"", "\"");
  }

  /** How many fields there are, empty ones included. */
  int count() {
    return all.size();
  }

  /** The last column that is not empty, or 0. */
  int filled() {
    int last = count();
    while (last > 0 && isEmpty(last)) {
      last--;
    }
    return last;
  }

  boolean isEmpty(int column) {
    return text(column).isEmpty();
  }

  boolean isLooseNumber(int column) {
    return NumberText.isLoose(text(column));
  }

  /** Whether a field holds a number, or says that there is none. */
  boolean saysNumber(int column) {
    return isLooseNumber(column) || NumberText.isMissing(text(column));
  }

  int looseNumbers() {
    return (int) all.stream().filter(NumberText::isLoose).count();
  }

  /** Whether these are two numbers or more, and no field is left to be cut into numbers. */
  boolean areParted() {
    return looseNumbers() >= 2
        && all.stream()
            .map(field -> field.split(Lines.BLANK + "+", 3))
            .noneMatch(
                words ->
                    words.length > 1
                        && NumberText.isLoose(words[0])
                        && NumberText.isLoose(words[1]));
  }

  /** The field as it stands; empty when it is in quotes or there is none. */
  String unquoted(int column) {
    return column <= count() && quoted.get(column - 1) ? "" : text(column);
  }

  /** The field; empty when there is none. */
  String text(int column) {
    return column <= count() ? all.get(column - 1) : "";
  }
}
