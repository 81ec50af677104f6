package org.twinrig.intake;

import org.twinrig.intake.Sample.DecimalMark;
import org.twinrig.problem.UnusableInput;

/** How the lines of a file are to be read, as found on its sample. */
record TextFormat(Sample sample, Titles titles, DecimalMark mark, ColumnRoles columns) {
  static TextFormat of(Lines lines, Remarks remarks) throws UnusableInput {
    Sample sample = Sample.of(lines, remarks);
    Titles titles = Titles.above(lines, sample);
    if (sample.separator() == Separator.COMMA && !titles.nameBoth()) {
      sample.checkCommas(remarks);
    }
    if (sample.numeric().size() < 2) {
      throw remarks.refuse(
          sample.first(),
          "the numbers do not stand in columns: " + lines.excerpt(sample.first()),
          "each line needs a frequency in Hz and a level in dB");
    }
    DecimalMark mark = sample.decimalMark(remarks);
    return new TextFormat(sample, titles, mark, new ColumnRoles(sample, titles, remarks));
  }

  String frequencyUnit() {
    return columns.inKhz() ? "kHz" : "Hz";
  }

  /** How frequencies are written, to be read in Hz. */
  NumberText frequencies() {
    return new NumberText(mark.mark, columns.inKhz() ? 3 : 0);
  }

  /** How levels are written. */
  NumberText levels() {
    return new NumberText(mark.mark, 0);
  }

  /** The columns in a sentence. */
  String told() {
    String phase =
        columns.phase().isPresent()
            ? ", " + columns.named(columns.phase().getAsInt()) + " the phase."
            : ".";
    return "Columns are parted by %s, with %s: %s is the frequency in %s, %s the level in dB%s"
        .formatted(
            sample.separator().words,
            mark.words,
            columns.named(columns.frequency()),
            frequencyUnit(),
            columns.named(columns.level()),
            phase);
  }
}
