package org.twinrig.intake;

/** What sort of line is this, before anything is known about separator and decimal mark. */
final class LineShapes {
  /** The sorts. */
  enum Shape {
    BLANK,
    COMMENT,
    /** It starts with a number, or two of its fields are numbers. */
    NUMBERS,
    TEXT
  }

  private static final NumberText WITH_POINT = new NumberText('.', 0);

  private final Lines lines;
  private final Fields fields = new Fields();

  LineShapes(Lines lines) {
    this.lines = lines;
  }

  Shape of(int line) {
    char[] chars = lines.chars();
    int to = lines.to(line);
    int first = firstInk(line);
    if (isSeparatorsOnly(chars, first, to)) {
      return Shape.BLANK;
    }
    if (isCommentMark(chars, first, to)) {
      return Shape.COMMENT;
    }
    return startsWithNumber(chars, first, to) || holdsTwoNumbers(line) ? Shape.NUMBERS : Shape.TEXT;
  }

  /** The same answer for the two commonest reasons to pass over a line. */
  boolean isBlankOrComment(int line) {
    int first = firstInk(line);
    int to = lines.to(line);
    return isSeparatorsOnly(lines.chars(), first, to) || isCommentMark(lines.chars(), first, to);
  }

  /** An empty row, as spreadsheets write it. */
  private static boolean isSeparatorsOnly(char[] chars, int from, int to) {
    int at = from;
    while (at < to && endsWord(chars[at])) {
      at++;
    }
    return at == to;
  }

  /** The first character that is neither blank nor an opening quote. */
  private int firstInk(int line) {
    char[] chars = lines.chars();
    int to = lines.to(line);
    int first = lines.from(line);
    while (first < to && (Lines.isBlank(chars[first]) || chars[first] == '"')) {
      first++;
    }
    return first;
  }

  private static boolean isCommentMark(char[] chars, int at, int to) {
    return switch (chars[at]) {
      case '#', '*', ';', '%', '!' -> true;
      case '/' -> at + 1 < to && chars[at + 1] == '/';
      default -> false;
    };
  }

  private static boolean startsWithNumber(char[] chars, int first, int to) {
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
    return Lines.isBlank(c) || c == ',' || c == ';' || c == '"';
  }

  private boolean holdsTwoNumbers(int line) {
    for (Separator separator : Separator.values()) {
      if (separator != Separator.SPACES) {
        fields.cut(lines, line, separator);
        if (fields.looseNumbers() >= 2) {
          return true;
        }
      }
    }
    return false;
  }
}
