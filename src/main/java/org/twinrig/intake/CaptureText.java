package org.twinrig.intake;

import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** A capture as delimited text: the questions of this package, asked in order. */
final class CaptureText {
  /** A million lines of 32 characters; as characters and numbers they take up five times that. */
  static final int MOST_BYTES = 32 << 20;

  private CaptureText() {}

  static Reading read(FileBytes file, Remarks remarks) throws UnusableInput {
    if (file.bytes().length > MOST_BYTES) {
      throw remarks.refuse(
          0,
          "the text has " + file.megabytes(32) + " MB, but at most 32 MB are read",
          "export this one curve with fewer points");
    }
    DecodedText text = DecodedText.of(file.bytes(), remarks);
    Lines lines = Lines.of(text.chars(), remarks);
    Sample sample = Sample.of(lines, new LineShapes(lines), remarks);
    Dialect dialect = Dialect.of(lines, sample, remarks);
    NumberLines numbers = new NumberLines(lines, dialect, remarks);
    Points points = numbers.read();
    PointOrder order = new PointOrder(points, remarks);
    Response response = order.response();
    Plausibility.check(response, dialect, saysDb(lines, dialect, sample), remarks);
    Layout layout =
        new Layout(
            text.encoding(),
            text.byteOrderMark(),
            lines.ends(),
            dialect.separator(),
            dialect.mark(),
            dialect.columns(),
            dialect.frequencyUnit(),
            order.order(),
            numbers.skipped());
    return new Reading(
        response,
        layout,
        remarks.notes(),
        file.sha256(),
        points.size() + numbers.zeroHzPoints(),
        remarks.source());
  }

  /** Whether the level's title or any line above the numbers says decibel. */
  private static boolean saysDb(Lines lines, Dialect dialect, Sample sample) {
    if (HeaderWords.of(dialect.columns().title(dialect.columns().level()).orElse("")).saysDb()) {
      return true;
    }
    for (int line = 1; line < sample.first(); line++) {
      if (HeaderWords.of(lines.text(line)).saysDb()) {
        return true;
      }
    }
    return false;
  }
}
