package org.twinrig.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.problem.UnusableInput;

/**
 * The lines on which the format rests: the first fifty lines of numbers with no other text between,
 * or the longest such row when none has fifty; what parts them, and the columns they make.
 *
 * @param rows those that the separator cuts into numbers, by line
 * @param begin where the row of numbers begins, before anything was cut
 * @param width the commonest number of fields, empty ones included
 * @param filled the commonest number of fields up to the last that is not empty
 * @param numeric the columns that hold a number, or say that there is none, in most lines
 * @param occupied the columns that are not empty throughout
 */
record Sample(
    Lines lines,
    NavigableMap<Integer, Fields> rows,
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

    final String words;
    final char mark;

    DecimalMark(String words, char mark) {
      this.words = words;
      this.mark = mark;
    }
  }

  static Sample of(Lines lines, Remarks remarks) throws UnusableInput {
    List<Integer> longest = longestRow(lines, remarks);
    for (Separator separator : Separator.values()) {
      NavigableMap<Integer, Fields> rows = new TreeMap<>();
      longest.forEach(line -> rows.put(line, lines.cut(line, separator)));
      // A header line among them has no vote.
      rows.values().removeIf(fields -> !fields.areParted());
      if (2 * rows.size() >= longest.size()) {
        return of(lines, rows, longest.get(0), separator);
      }
    }
    throw refuseUnparted(lines, longest.get(0), remarks);
  }

  private static Sample of(
      Lines lines, NavigableMap<Integer, Fields> rows, int begin, Separator separator) {
    int width = commonest(rows.values().stream().map(Fields::count));
    List<Integer> numeric = new ArrayList<>();
    List<Integer> occupied = new ArrayList<>();
    for (int column = 1; column <= width; column++) {
      int c = column;
      List<Fields> filled = rows.values().stream().filter(f -> !f.isEmpty(c)).toList();
      if (!filled.isEmpty()) {
        occupied.add(c);
      }
      if (2 * filled.stream().filter(f -> f.saysNumber(c)).count() >= rows.size()) {
        numeric.add(c);
      }
    }
    int filled = commonest(rows.values().stream().map(Fields::filled));
    return new Sample(lines, rows, begin, separator, width, filled, numeric, occupied);
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

  private static UnusableInput refuseUnparted(Lines lines, int begin, Remarks remarks) {
    Fields words = lines.cut(begin, Separator.SPACES);
    return words.filled() == 1 && words.isLooseNumber(1)
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
  private static int commonest(Stream<Integer> counts) {
    return counts.collect(Collectors.groupingBy(c -> c, Collectors.counting())).entrySet().stream()
        .max(
            Map.Entry.<Integer, Long>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .orElseThrow()
        .getKey();
  }

  int first() {
    return rows.firstKey();
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
    for (Fields fields : rows.values()) {
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
    int points = 0;
    int commas = 0;
    int last = rows.lastKey();
    for (int line = first();
        line <= last || (line <= lines.count() && points + commas == 0);
        line++) {
      Fields fields = rows.containsKey(line) ? rows.get(line) : lines.cut(line, separator);
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
