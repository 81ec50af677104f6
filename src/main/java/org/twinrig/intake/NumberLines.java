package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.intake.Lines.Shape;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;

/**
 * Every line, read. From the first line of numbers on, a line obeys the format, is blank, is a
 * comment, or has the file refused, with what exactly is wrong with it and what would be right;
 * only text after the last number is left out.
 */
final class NumberLines {
  /** Beyond this no level, gain or loss can be; common practice, no source. */
  private static final double MOST_DB = 300;

  private static final String FOOTER = "text after the numbers";
  private static final String NO_LEVEL = "no level";

  /** Of lines with a frequency so many, at most, may be without a level: our choice. */
  private static final double MOST_WITHOUT = 0.1;

  /** Adjacent lines that hold no point for the same reason. */
  private record Skipped(String why, int from, int to) {
    String told() {
      return from + (to > from ? " to " + to : "") + " (" + why + ")";
    }
  }

  private final Lines lines;
  private final TextFormat format;
  private final Remarks remarks;
  private Fields fields = Fields.of("", Separator.COMMA);
  private final List<Points.Point> points = new ArrayList<>();
  private final List<Skipped> skipped = new ArrayList<>();
  private final List<Integer> withoutLevel = new ArrayList<>();
  private final List<Integer> groupedLines = new ArrayList<>();
  private int zeroHzLine;

  NumberLines(Lines lines, TextFormat format, Remarks remarks) {
    this.lines = lines;
    this.format = format;
    this.remarks = remarks;
  }

  /** Reads all lines; the points are in the order of the file. */
  Points read() throws UnusableInput {
    int cut = cutLine();
    for (int line = 1; line <= lines.count(); line++) {
      if (line == cut) {
        remarks.note(line, "the file ends within this line, which was left out");
        skip("cut short", line, lines.count());
        break;
      }
      if (!takePoint(line) && passOver(line).equals(FOOTER)) {
        remarks.note(line, "the text after the numbers was left out");
        skip(FOOTER, line, lines.count());
        break;
      }
    }
    if (zeroHzLine > 0) {
      remarks.note(zeroHzLine, "the point at 0 Hz was left out");
    }
    tellWithoutLevel();
    if (!groupedLines.isEmpty()) {
      remarks.note(
          groupedLines.get(0),
          "numbers have thousands marks here"
              + (groupedLines.size() > 1
                  ? " and in " + Numbers.count(groupedLines.size() - 1, "other line", "other lines")
                  : ""));
    }
    return new Points(points);
  }

  /** A few lines without a level leave gaps; many say that the file is not what it seems. */
  private void tellWithoutLevel() throws UnusableInput {
    int missing = withoutLevel.size();
    if (missing > MOST_WITHOUT * (points.size() + missing)) {
      throw complaint(withoutLevel.get(0));
    }
    if (missing > 0) {
      remarks.note(
          withoutLevel.get(0),
          missing == 1
              ? "this line has no level and was left out"
              : "this and "
                  + Numbers.count(missing - 1, "other line", "other lines")
                  + " have no level and were left out");
    }
  }

  /**
   * The last line where the file ends within it, for lack of fields or, where every level has the
   * same number of decimals, for lack of these; else 0.
   */
  private int cutLine() {
    int last = lines.count();
    if (lines.endsWithLine() || last < 2 || lines.shape(last) != Shape.NUMBERS) {
      return 0;
    }
    if (!isWhole(last)) {
      return fields.count() < format.sample.filled() ? last : 0;
    }
    int here = decimals();
    int usual = -1;
    for (int line = 1; line < last; line++) {
      if (lines.shape(line) == Shape.NUMBERS && isWhole(line)) {
        if (usual >= 0 && decimals() != usual) {
          return 0;
        }
        usual = decimals();
      }
    }
    return format.level == format.sample.filled() && here < usual ? last : 0;
  }

  private int decimals() {
    String level = fields.text(levelColumn());
    int mark = level.lastIndexOf(format.mark.mark);
    return mark < 0 ? 0 : level.length() - mark - 1;
  }

  /** The lines that hold no point, in a sentence. */
  String told() {
    return skipped.isEmpty()
        ? "Every line holds a point."
        : skipped.stream()
            .map(Skipped::told)
            .collect(Collectors.joining(", ", "Lines without a point: ", "."));
  }

  /** How many points were left out because they are at 0 Hz. */
  int zeroHzPoints() {
    return zeroHzLine > 0 ? 1 : 0;
  }

  private boolean takePoint(int line) throws UnusableInput {
    if (lines.isBlankOrComment(line) || !isWhole(line)) {
      return false;
    }
    double hz = frequency();
    double db = level();
    if (hz == 0 && zeroHzLine == 0 && fields.saysNumber(levelColumn())) {
      // The lowest line of a Fourier transform; it has no place on a logarithmic axis.
      zeroHzLine = line;
      return true;
    }
    if (hz > 0 && Math.abs(db) <= MOST_DB && hz < Double.POSITIVE_INFINITY) {
      points.add(new Points.Point(hz, db, line));
      if (format.frequencies.isGrouped(frequencyText())
          || format.levels.isGrouped(fields.text(levelColumn()))) {
        groupedLines.add(line);
      }
      return true;
    }
    return false;
  }

  /** Why a line that holds no point may be passed over; throws when it may not. */
  private String passOver(int line) throws UnusableInput {
    Shape shape = lines.shape(line);
    if (isWithoutLevel(line)) {
      withoutLevel.add(line);
      skip(NO_LEVEL, line, line);
      return NO_LEVEL;
    }
    String why =
        switch (shape) {
          case BLANK -> "blank";
          case COMMENT -> "comment";
          case NUMBERS, TEXT -> points.isEmpty() ? above(line, shape) : below(line, shape);
        };
    if (!why.equals(FOOTER)) {
      skip(why, line, line);
    }
    return why;
  }

  private String above(int line, Shape shape) throws UnusableInput {
    int titles = format.titles.line();
    if ((shape == Shape.NUMBERS && titles > 0 && line > titles) || isSpoiledPoint(line)) {
      throw complaint(line);
    }
    return "header";
  }

  private String below(int line, Shape shape) throws UnusableInput {
    boolean between = numbersFollow(line);
    if (shape == Shape.NUMBERS || isNearlyPoint(line, between)) {
      throw complaint(line);
    }
    if (between) {
      throw remarks.refuse(
          line,
          "there is text between the numbers: " + lines.excerpt(line),
          "put one curve in a file, and start remarks with #");
    }
    return FOOTER;
  }

  /** A point of which nothing but the level is missing, amid or right after others. */
  private boolean isWithoutLevel(int line) {
    return !points.isEmpty()
        && !lines.isBlankOrComment(line)
        && isWhole(line)
        && frequency() > 0
        && NumberText.isMissing(fields.text(levelColumn()))
        && !NumberText.isSilence(fields.text(levelColumn()));
  }

  private boolean numbersFollow(int line) {
    for (int later = line + 1; later <= lines.count(); later++) {
      if (lines.shape(later) == Shape.NUMBERS) {
        return true;
      }
    }
    return false;
  }

  private void skip(String why, int from, int to) {
    Skipped last = skipped.isEmpty() ? null : skipped.get(skipped.size() - 1);
    if (last != null && last.why().equals(why) && last.to() == from - 1) {
      skipped.set(skipped.size() - 1, new Skipped(why, last.from(), to));
    } else {
      skipped.add(new Skipped(why, from, to));
    }
  }

  /**
   * Whether a line that cannot be read was meant as a point, so that it must not pass for a header
   * or a footer.
   */
  private boolean isSpoiledPoint(int line) {
    if (!isWhole(line)) {
      return fields.count() >= 2 && fields.looseNumbers() == fields.filled();
    }
    String level = fields.text(levelColumn());
    if (!Double.isNaN(frequency())) {
      return format.sample.separator() != Separator.SPACES
          || startsLikeNumber(level)
          || NumberText.isMissing(level);
    }
    return !Double.isNaN(level()) && startsLikeNumber(frequencyText());
  }

  /**
   * Whether a line of text has its fields and a level, so that it was a point but for its
   * frequency. Below the numbers it may also be a sum or a mean: there the frequency must have a
   * digit at least.
   */
  private boolean isNearlyPoint(int line, boolean betweenNumbers) {
    return isWhole(line) && !Double.isNaN(level()) && (betweenNumbers || hasDigit(frequencyText()));
  }

  /** The complaint about a line that should hold a point; to be thrown. */
  private UnusableInput complaint(int line) {
    if (!isWhole(line)) {
      return wrongCount(line);
    }
    double hz = frequency();
    if (Double.isNaN(hz)) {
      return noNumber(line, "frequency", frequencyText());
    }
    if (hz < 0) {
      return remarks.refuse(
          line,
          "the frequency " + frequencyText() + " " + format.frequencyUnit() + " is below zero",
          "frequencies lie above 0 Hz");
    }
    if (hz == 0 && fields.saysNumber(levelColumn())) {
      return remarks.refuse(
          line, "a second point stands at 0 Hz", "check the frequencies: they lie above 0 Hz");
    }
    if (Double.isInfinite(hz)) {
      return remarks.refuse(
          line,
          "the frequency " + frequencyText() + " is too large",
          "frequencies are given in Hz");
    }
    String level = fields.text(levelColumn());
    return Double.isNaN(level())
        ? noNumber(line, "level", level)
        : remarks.refuse(
            line,
            "the level " + level + " dB lies outside -300 to 300 dB",
            "check the decimal mark and which column is the level");
  }

  private UnusableInput wrongCount(int line) {
    int usual = format.sample.filled();
    boolean fewer = fields.count() < usual;
    return remarks.refuse(
        line,
        Numbers.count(fewer ? fields.count() : fields.filled(), "field", "fields")
            + " where other lines have "
            + usual
            + ": "
            + lines.excerpt(line),
        fewer
            ? "complete the line, or use one separator in all lines"
            : "use one separator and one decimal mark in all lines");
  }

  private UnusableInput noNumber(int line, String what, String field) {
    if (field.isEmpty()) {
      return remarks.refuse(
          line, "the " + what + " is missing", "complete the line or leave it out");
    }
    String said = "the " + what + " is " + Remarks.excerpt(field);
    if (NumberText.isSilence(field)) {
      return remarks.refuse(
          line,
          said + ", which is the level of no sound at all",
          "leave the line out, or measure again where the level is above the noise");
    }
    if (NumberText.isMissing(field)) {
      return remarks.refuse(
          line, said + ", which is no number", "leave the line out, or measure again");
    }
    String example = "1000" + format.mark.mark + "5";
    return remarks.refuse(
        line,
        "the " + what + " " + Remarks.excerpt(field) + " is not a number",
        field.chars().allMatch(c -> isDigitOrMark((char) c))
            ? "write numbers without thousands marks and with one decimal mark, such as " + example
            : "write a bare number such as "
                + example
                + ", or start the line with # if it is a remark");
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

  /** Cuts a line; whether it has the fields that lines have here. */
  private boolean isWhole(int line) {
    fields = lines.cut(line, format.sample.separator());
    return format.sample.fits(fields);
  }

  private int levelColumn() {
    return format.level;
  }

  private String frequencyText() {
    return fields.text(format.frequency);
  }

  private double frequency() {
    return format.frequencies.parse(frequencyText());
  }

  private double level() {
    return format.levels.parse(fields.text(levelColumn()));
  }
}
