package org.twinrig.intake;

import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;

/** What exactly is wrong with a line that should hold a point, and what would be right. */
final class LineComplaint {
  private final Lines lines;
  private final Dialect dialect;
  private final Remarks remarks;
  private final Fields fields = new Fields();

  LineComplaint(Lines lines, Dialect dialect, Remarks remarks) {
    this.lines = lines;
    this.dialect = dialect;
    this.remarks = remarks;
  }

  /**
   * Whether a line that cannot be read was meant as a point, so that it must not pass for a header
   * or a footer.
   */
  boolean isSpoiledPoint(int line) {
    fields.cut(lines, line, dialect.separator());
    if (!dialect.table().fits(fields)) {
      return fields.count() >= 2 && fields.looseNumbers() == fields.filled();
    }
    int level = dialect.columns().level();
    if (!Double.isNaN(frequency())) {
      return dialect.separator() != Separator.SPACES
          || startsLikeNumber(fields.text(level))
          || MissingNumber.isSaidBy(fields.text(level));
    }
    return !Double.isNaN(level()) && startsLikeNumber(fields.text(dialect.columns().frequency()));
  }

  /**
   * Whether a line of text has its fields and a level, so that it was a point but for its
   * frequency. Below the numbers it may also be a sum or a mean: there the frequency must have a
   * digit at least.
   */
  boolean isNearlyPoint(int line, boolean betweenNumbers) {
    fields.cut(lines, line, dialect.separator());
    return dialect.table().fits(fields)
        && !Double.isNaN(level())
        && (betweenNumbers || hasDigit(fields.text(dialect.columns().frequency())));
  }

  /** Whether the level's field holds a number, or says that there is none. */
  boolean saysLevel(Fields line) {
    int level = dialect.columns().level();
    return line.isLooseNumber(level) || MissingNumber.isSaidBy(line.text(level));
  }

  /** The complaint about a line; to be thrown. */
  UnusableInput of(int line) {
    fields.cut(lines, line, dialect.separator());
    if (!dialect.table().fits(fields)) {
      return wrongCount(line);
    }
    double hz = frequency();
    String unit = dialect.frequencyUnit().symbol();
    String frequency = fields.text(dialect.columns().frequency());
    if (Double.isNaN(hz)) {
      return noNumber(line, "frequency", frequency);
    }
    if (hz < 0) {
      return remarks.refuse(
          line,
          "the frequency " + frequency + " " + unit + " is below zero",
          "frequencies lie above 0 Hz");
    }
    if (hz == 0 && saysLevel(fields)) {
      return remarks.refuse(
          line, "a second point stands at 0 Hz", "check the frequencies: they lie above 0 Hz");
    }
    if (Double.isInfinite(hz)) {
      return remarks.refuse(
          line, "the frequency " + frequency + " is too large", "frequencies are given in Hz");
    }
    String level = fields.text(dialect.columns().level());
    return Double.isNaN(level())
        ? noNumber(line, "level", level)
        : remarks.refuse(
            line,
            "the level " + level + " dB lies outside -300 to 300 dB",
            "check the decimal mark and which column is the level");
  }

  private UnusableInput wrongCount(int line) {
    String excerpt = Remarks.excerpt(lines.text(line));
    int usual = dialect.table().filled();
    return fields.count() < usual
        ? remarks.refuse(
            line,
            Numbers.count(fields.count(), "field", "fields")
                + " where other lines have "
                + usual
                + ": "
                + excerpt,
            "complete the line, or use one separator in all lines")
        : remarks.refuse(
            line,
            Numbers.count(fields.filled(), "field", "fields")
                + " where other lines have "
                + usual
                + ": "
                + excerpt,
            "use one separator and one decimal mark in all lines");
  }

  private UnusableInput noNumber(int line, String what, String field) {
    if (field.isEmpty()) {
      return remarks.refuse(
          line, "the " + what + " is missing", "complete the line or leave it out");
    }
    if (MissingNumber.isSilence(field)) {
      return remarks.refuse(
          line,
          "the "
              + what
              + " is "
              + Remarks.excerpt(field)
              + ", which is the level of no sound at all",
          "leave the line out, or measure again where the level is above the noise");
    }
    if (MissingNumber.isSaidBy(field)) {
      return remarks.refuse(
          line,
          "the " + what + " is " + Remarks.excerpt(field) + ", which is no number",
          "leave the line out, or measure again");
    }
    return remarks.refuse(
        line, "the " + what + " " + Remarks.excerpt(field) + " is not a number", remedy(field));
  }

  private String remedy(String field) {
    char mark = dialect.mark().mark();
    String example = "1000" + mark + "5";
    if (field.chars().allMatch(c -> isDigitOrMark((char) c))) {
      return "write numbers without thousands marks and with one decimal mark, such as " + example;
    }
    return "write a bare number such as "
        + example
        + ", or start the line with # if it is a remark";
  }

  private static boolean isDigitOrMark(char c) {
    return NumberText.isDigit(c) || Lines.isBlank(c) || ".,'-+".indexOf(c) >= 0;
  }

  private static boolean startsLikeNumber(String field) {
    return !field.isEmpty()
        && (NumberText.isDigit(field.charAt(0)) || "-+.,\u2212".indexOf(field.charAt(0)) >= 0)
        && hasDigit(field);
  }

  private static boolean hasDigit(String field) {
    return field.chars().anyMatch(c -> NumberText.isDigit((char) c));
  }

  private double frequency() {
    return fields.number(dialect.columns().frequency(), dialect.frequencies());
  }

  private double level() {
    return fields.number(dialect.columns().level(), dialect.levels());
  }
}
