package org.twinrig.intake;

import java.util.Optional;
import org.twinrig.problem.UnusableInput;

/** What stands between two fields of a line. */
public enum Separator {
  // In the order in which they are tried: a semicolon never belongs to a number, a comma may.
  /** A semicolon. */
  SEMICOLON("semicolons", ';'),
  /** A tab. */
  TAB("tabs", '\t'),
  /** A comma. */
  COMMA("commas", ','),
  /** One or more spaces or tabs. */
  SPACES("spaces", ' ');

  private final String words;
  private final char mark;

  Separator(String words, char mark) {
    this.words = words;
    this.mark = mark;
  }

  /** The separator in words: for example {@code semicolons}. */
  public String words() {
    return words;
  }

  boolean isAt(char c) {
    return this == SPACES ? Lines.isBlank(c) : c == mark;
  }

  /** The first that cuts at least half of the sample into numbers. */
  static Separator of(Lines lines, Sample sample, Remarks remarks) throws UnusableInput {
    for (Separator separator : values()) {
      if (separator.cuts(lines, sample)) {
        return separator;
      }
    }
    String text = lines.text(sample.first());
    Fields fields = new Fields();
    fields.cut(lines, sample.first(), SPACES);
    if (fields.filled() == 1 && fields.isLooseNumber(1)) {
      throw remarks.refuse(
          sample.first(),
          "the line holds one number only: " + Remarks.excerpt(text),
          "each line needs a frequency in Hz and a level in dB");
    }
    throw remarks.refuse(
        sample.first(),
        "the line does not part into numbers: " + Remarks.excerpt(text),
        "put commas, semicolons, tabs or spaces between bare numbers, and units in the header");
  }

  private boolean cuts(Lines lines, Sample sample) {
    Fields fields = new Fields();
    long cut = sample.lines().stream().filter(line -> cuts(lines, line, fields)).count();
    return 2 * cut >= sample.lines().size();
  }

  /** Whether this cuts a line into two numbers or more, and no field is left to be cut. */
  boolean cuts(Lines lines, int line, Fields fields) {
    fields.cut(lines, line, this);
    if (fields.looseNumbers() < 2) {
      return false;
    }
    for (int column = 1; column <= fields.count(); column++) {
      if (fields.holdsTwoNumbers(column)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Where every comma of a pair of columns has digits only on both sides, it may be a decimal mark
   * as well.
   *
   * @return the first line that can be read in two ways
   */
  static Optional<Integer> doubtfulComma(Lines lines, Sample sample, SampleTable table) {
    for (int column : table.numeric()) {
      if (table.numeric().contains(column + 1) && isDoubtful(lines, sample, table, column)) {
        return Optional.of(sample.first());
      }
    }
    return Optional.empty();
  }

  private static boolean isDoubtful(Lines lines, Sample sample, SampleTable table, int column) {
    Fields fields = new Fields();
    for (int line : sample.lines()) {
      fields.cut(lines, line, COMMA);
      if (table.fits(fields)
          && fields.isLooseNumber(column)
          && !(fields.isBareWhole(column) && fields.isBareDigits(column + 1))) {
        return false;
      }
    }
    return true;
  }
}
