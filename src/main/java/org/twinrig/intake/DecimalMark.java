package org.twinrig.intake;

import org.twinrig.problem.UnusableInput;

/** What parts the whole digits of a number from its decimals. */
public enum DecimalMark {
  /** A point. */
  POINT("decimal points", '.'),
  /** A comma. */
  COMMA("decimal commas", ','),
  /** All numbers are whole. */
  NONE("whole numbers", '.');

  private final String words;
  private final char mark;

  DecimalMark(String words, char mark) {
    this.words = words;
    this.mark = mark;
  }

  /** The mark in words: for example {@code decimal commas}. */
  public String words() {
    return words;
  }

  char mark() {
    return mark;
  }

  /**
   * The mark that most numbers of the sample have; where the sample has none, the first one seen
   * after it.
   */
  static DecimalMark of(Lines lines, Sample sample, SampleTable table, Remarks remarks)
      throws UnusableInput {
    int points = 0;
    int commas = 0;
    Fields fields = new Fields();
    for (int line = sample.first();
        line <= sample.last() || (line <= lines.count() && points + commas == 0);
        line++) {
      fields.cut(lines, line, table.separator());
      for (int column : table.numeric()) {
        if (fields.isLooseNumber(column)) {
          char last = lastMark(fields.text(column));
          points += last == '.' ? 1 : 0;
          commas += last == ',' ? 1 : 0;
        }
      }
    }
    if (points == commas && points > 0) {
      throw remarks.refuse(
          sample.first(),
          "points and commas both stand as decimal marks: "
              + Remarks.excerpt(lines.text(sample.first())),
          "export all numbers with one decimal mark");
    }
    return points == commas ? NONE : points > commas ? POINT : COMMA;
  }

  /** In 1.000,50 it is the comma. */
  private static char lastMark(String number) {
    int point = number.lastIndexOf('.');
    int comma = number.lastIndexOf(',');
    return point == comma ? ' ' : point > comma ? '.' : ',';
  }
}
