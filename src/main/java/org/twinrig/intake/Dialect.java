package org.twinrig.intake;

import org.twinrig.intake.Layout.FrequencyUnit;
import org.twinrig.problem.UnusableInput;

/** How the lines of a file are to be read, as found on its sample. */
record Dialect(
    DecimalMark mark,
    SampleTable table,
    Titles titles,
    Columns columns,
    FrequencyUnit frequencyUnit) {

  static Dialect of(Lines lines, Sample numbers, Remarks remarks) throws UnusableInput {
    Separator separator = Separator.of(lines, numbers, remarks);
    Sample sample = numbers.cutBy(separator, lines);
    SampleTable table = SampleTable.of(lines, sample, separator);
    Titles titles = Titles.above(sample.first(), lines, table);
    if (separator == Separator.COMMA && !titles.nameBoth()) {
      refuseDoubtfulCommas(lines, sample, table, remarks);
    }
    if (table.numeric().size() < 2) {
      throw remarks.refuse(
          sample.first(),
          "the numbers do not stand in columns: " + Remarks.excerpt(lines.text(sample.first())),
          "each line needs a frequency in Hz and a level in dB");
    }
    DecimalMark mark = DecimalMark.of(lines, sample, table, remarks);
    ColumnRoles roles = new ColumnRoles(table, titles, remarks);
    Columns columns = roles.columns();
    return new Dialect(mark, table, titles, columns, roles.unit(columns));
  }

  Separator separator() {
    return table.separator();
  }

  /** How frequencies are written, to be read in Hz. */
  NumberText frequencies() {
    return new NumberText(mark.mark(), frequencyUnit.powerOfTen());
  }

  /** How levels are written. */
  NumberText levels() {
    return new NumberText(mark.mark(), 0);
  }

  private static void refuseDoubtfulCommas(
      Lines lines, Sample sample, SampleTable table, Remarks remarks) throws UnusableInput {
    var line = Separator.doubtfulComma(lines, sample, table);
    if (line.isPresent()) {
      throw remarks.refuse(
          line.get(),
          "the commas may part columns or be decimal marks: "
              + Remarks.excerpt(lines.text(line.get())),
          "write decimal points, part columns by semicolons or tabs, or title each column in a header");
    }
  }
}
