package org.twinrig.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.twinrig.problem.UnusableInput;

/**
 * The lines on which the format rests: the first fifty lines of numbers with no other text between,
 * or the longest such row when none has fifty; what parts them, and the columns they make.
 *
 * @param rows those that the separator cuts into numbers
 * @param begin where the row of numbers begins, before anything was cut
 * @param width the commonest number of fields, empty ones included
 * @param filled the commonest number of fields up to the last that is not empty
 * @param numeric the columns that hold a number, or say that there is none, in most lines
 * @param occupied the columns that are not empty throughout
 */
record Sample(
    Lines lines,
    List<Integer> rows,
    int begin,
    Separator separator,
    int width,
    int filled,
    List<Integer> numeric,
    List<Integer> occupied) {
  private static final int ENOUGH = 50;

  /** What parts the whole digits of a number from its decimals. */
  enum DecimalMark {
    POINT("decimal points", '.'),
    COMMA("decimal commas", ','),
    /** All numbers are whole. */
    NONE("whole numbers", '.');

    private final String words;
    private final char mark;

    DecimalMark(String words, char mark) {
      this.words = words;
      this.mark = mark;
    }

    String words() {
      return words;
    }

    char mark() {
      return mark;
    }
  }

  static Sample of(Lines lines, Remarks remarks) throws UnusableInput {
    Fields fields = new Fields();
    List<Integer> longest = longestRow(lines, remarks);
    Separator separator = separator(lines, longest, remarks);
    // A header line among them has no vote.
    List<Integer> rows = longest.stream().filter(l -> separator.cuts(lines, l, fields)).toList();
    Map<Integer, Integer> widths = new HashMap<>();
    Map<Integer, Integer> fills = new HashMap<>();
    Map<Integer, Integer> numbers = new HashMap<>();
    Map<Integer, Integer> used = new HashMap<>();
    for (int line : rows) {
      lines.cut(line, separator, fields);
      widths.merge(fields.count(), 1, Integer::sum);
      fills.merge(fields.filled(), 1, Integer::sum);
      for (int column = 1; column <= fields.count(); column++) {
        boolean ink = !fields.isEmpty(column);
        numbers.merge(column, ink && fields.saysNumber(column) ? 1 : 0, Integer::sum);
        used.merge(column, ink ? 1 : 0, Integer::sum);
      }
    }
    int width = commonest(widths);
    List<Integer> columns = IntStream.rangeClosed(1, width).boxed().toList();
    return new Sample(
        lines,
        rows,
        longest.get(0),
        separator,
        width,
        commonest(fills),
        columns.stream().filter(c -> 2 * numbers.get(c) >= rows.size()).toList(),
        columns.stream().filter(c -> used.get(c) > 0).toList());
  }

  private static List<Integer> longestRow(Lines lines, Remarks remarks) throws UnusableInput {
    List<Integer> longest = List.of();
    List<Integer> row = new ArrayList<>();
    for (int line = 1; line <= lines.count() && longest.size() < ENOUGH; line++) {
      switch (lines.shape(line)) {
        case NUMBERS -> row.add(line);
        case TEXT -> row = new ArrayList<>();
        case BLANK, COMMENT -> {}
      }
      longest = row.size() > longest.size() ? row : longest;
    }
    if (longest.isEmpty()) {
      throw remarks.refuse(
          "there is no line of numbers",
          "each line needs a frequency in Hz and a level in dB, and lines that start with # * ; //"
              + " % or ! are comments");
    }
    return List.copyOf(longest);
  }

  /** The first that cuts at least half of the lines into numbers. */
  private static Separator separator(Lines lines, List<Integer> longest, Remarks remarks)
      throws UnusableInput {
    Fields fields = new Fields();
    for (Separator each : Separator.values()) {
      long cut = longest.stream().filter(line -> each.cuts(lines, line, fields)).count();
      if (2 * cut >= longest.size()) {
        return each;
      }
    }
    int begin = longest.get(0);
    lines.cut(begin, Separator.SPACES, fields);
    throw fields.filled() == 1 && fields.isLooseNumber(1)
        ? remarks.refuse(
            begin,
            "the line holds one number only: " + lines.excerpt(begin),
            "each line needs a frequency in Hz and a level in dB")
        : remarks.refuse(
            begin,
            "the line does not part into numbers: " + lines.excerpt(begin),
            "put commas, semicolons, tabs or spaces between bare numbers, and units in the header");
  }

  /** Among equally common counts the smaller: what is missing is seen, what is extra is not. */
  private static int commonest(Map<Integer, Integer> counts) {
    return counts.entrySet().stream()
        .max(
            Map.Entry.<Integer, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .orElseThrow()
        .getKey();
  }

  int first() {
    return rows.get(0);
  }

  /** Whether a line has the fields that lines have here; separators may be missing at its end. */
  boolean fits(Fields line) {
    return line.filled() <= width && line.count() >= filled;
  }

  /**
   * Refuses commas that may be decimal marks as well: every one between a pair of columns has
   * digits only on both sides.
   */
  void checkCommas(Remarks remarks) throws UnusableInput {
    if (numeric.stream().anyMatch(c -> numeric.contains(c + 1) && isDoubtful(c))) {
      throw remarks.refuse(
          first(),
          "the commas may part columns or be decimal marks: " + lines.excerpt(first()),
          "write decimal points, part columns by semicolons or tabs, or title each column in a header");
    }
  }

  private boolean isDoubtful(int column) {
    Fields fields = new Fields();
    for (int line : rows) {
      lines.cut(line, Separator.COMMA, fields);
      if (fits(fields)
          && fields.isLooseNumber(column)
          && !(fields.unquoted(column).matches("\\D?\\d+")
              && fields.unquoted(column + 1).matches("\\d+"))) {
        return false;
      }
    }
    return true;
  }

  /** The mark that most numbers have; where these have none, the first one seen after them. */
  DecimalMark decimalMark(Remarks remarks) throws UnusableInput {
    Fields fields = new Fields();
    int points = 0;
    int commas = 0;
    int last = rows.get(rows.size() - 1);
    for (int line = first();
        line <= last || (line <= lines.count() && points + commas == 0);
        line++) {
      lines.cut(line, separator, fields);
      for (int column : numeric) {
        if (fields.isLooseNumber(column)) {
          // In 1.000,50 it is the comma.
          int beyond = fields.text(column).lastIndexOf('.') - fields.text(column).lastIndexOf(',');
          points += beyond > 0 ? 1 : 0;
          commas += beyond < 0 ? 1 : 0;
        }
      }
    }
    if (points == commas && points > 0) {
      throw remarks.refuse(
          first(),
          "points and commas both stand as decimal marks: " + lines.excerpt(first()),
          "export all numbers with one decimal mark");
    }
    return points == commas
        ? DecimalMark.NONE
        : points > commas ? DecimalMark.POINT : DecimalMark.COMMA;
  }
}
