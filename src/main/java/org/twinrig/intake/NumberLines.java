package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.intake.Layout.SkippedLines;
import org.twinrig.intake.Layout.Why;
import org.twinrig.problem.UnusableInput;

/**
 * Every line, read. From the first line of numbers on, a line obeys the dialect, is blank, is a
 * comment, or has the file refused; only text after the last number is left out.
 */
final class NumberLines {
  private final Lines lines;
  private final Dialect dialect;
  private final LineComplaint complaint;
  private final LineShapes shapes;
  private final Remarks remarks;
  private final NumberText frequencies;
  private final NumberText levels;
  private final Fields fields = new Fields();
  private final Points points = new Points();
  private final List<SkippedLines> skipped = new ArrayList<>();
  private int zeroHzLine;

  NumberLines(Lines lines, Dialect dialect, Remarks remarks) {
    this.lines = lines;
    this.dialect = dialect;
    this.remarks = remarks;
    this.frequencies = dialect.frequencies();
    this.levels = dialect.levels();
    this.shapes = new LineShapes(lines);
    this.complaint = new LineComplaint(lines, dialect, remarks);
  }

  /** Reads all lines; the points are in the order of the file. */
  Points read() throws UnusableInput {
    for (int line = 1; line <= lines.count(); line++) {
      if (!takePoint(line) && passOver(line) == Why.FOOTER) {
        skip(Why.FOOTER, line, lines.count());
        remarks.note(line, "the text after the numbers was left out");
        break;
      }
    }
    if (zeroHzLine > 0) {
      remarks.note(zeroHzLine, "the point at 0 Hz was left out");
    }
    return points;
  }

  List<SkippedLines> skipped() {
    return skipped;
  }

  /** How many points were left out because they are at 0 Hz. */
  int zeroHzPoints() {
    return zeroHzLine > 0 ? 1 : 0;
  }

  private boolean takePoint(int line) throws UnusableInput {
    if (shapes.isBlankOrComment(line)) {
      return false;
    }
    fields.cut(lines, line, dialect.separator());
    if (!dialect.table().fits(fields)) {
      return false;
    }
    double hz = fields.number(dialect.columns().frequency(), frequencies);
    double db = fields.number(dialect.columns().level(), levels);
    if (hz == 0 && zeroHzLine == 0 && complaint.saysLevel(fields)) {
      // The lowest line of a Fourier transform; it has no place on a logarithmic axis.
      zeroHzLine = line;
      return true;
    }
    if (hz > 0 && Math.abs(db) <= Plausibility.MOST_DB && hz < Double.POSITIVE_INFINITY) {
      points.add(hz, db, line);
      return true;
    }
    return false;
  }

  /** Why a line that holds no point may be passed over; throws when it may not. */
  private Why passOver(int line) throws UnusableInput {
    LineShapes.Shape shape = shapes.of(line);
    Why why =
        switch (shape) {
          case BLANK -> Why.BLANK;
          case COMMENT -> Why.COMMENT;
          case NUMBERS, TEXT -> textAt(line, shape);
        };
    if (why != Why.FOOTER) {
      skip(why, line, line);
    }
    return why;
  }

  private Why textAt(int line, LineShapes.Shape shape) throws UnusableInput {
    boolean above = points.size() == 0;
    if (above) {
      boolean belowTitles = dialect.titles().line() > 0 && line > dialect.titles().line();
      if ((belowTitles && shape == LineShapes.Shape.NUMBERS) || complaint.isSpoiledPoint(line)) {
        throw complaint.of(line);
      }
      return Why.HEADER;
    }
    boolean between = numbersFollow(line);
    if (shape == LineShapes.Shape.NUMBERS || complaint.isNearlyPoint(line, between)) {
      throw complaint.of(line);
    }
    if (between) {
      throw remarks.refuse(
          line,
          "there is text between the numbers: " + Remarks.excerpt(lines.text(line)),
          "put one curve in a file, and start remarks with #");
    }
    return Why.FOOTER;
  }

  private boolean numbersFollow(int line) {
    for (int later = line + 1; later <= lines.count(); later++) {
      if (shapes.of(later) == LineShapes.Shape.NUMBERS) {
        return true;
      }
    }
    return false;
  }

  private void skip(Why why, int fromLine, int toLine) {
    int last = skipped.size() - 1;
    if (last >= 0 && skipped.get(last).why() == why && skipped.get(last).toLine() == fromLine - 1) {
      skipped.set(last, new SkippedLines(why, skipped.get(last).fromLine(), toLine));
    } else {
      skipped.add(new SkippedLines(why, fromLine, toLine));
    }
  }
}
