package org.twinrig.intake;

import org.twinrig.intake.Layout.FrequencyUnit;
import org.twinrig.problem.UnusableInput;

/** How the lines of a file are to be read, as found on its sample. */
record Dialect(
    Separator separator,
    DecimalMark mark,
    SampleTable table,
    Titles titles,
    Columns columns,
    FrequencyUnit frequencyUnit) {

  static Dialect of(Lines lines, Sample sample, Remarks remarks) throws UnusableInput {
    Separator separator = Separator.of(lines, sample, remarks);
    SampleTable table = SampleTable.of(lines, sample, separator);
    int first = firstFitting(lines, sample, separator, table);
    Titles titles = Titles.above(first, lines, separator, table);
    if (separator == Separator.COMMA && !titles.nameBoth()) {
      refuseDoubtfulCommas(lines, sample, table, remarks);
    }
    if (table.numeric().size() < 2) {
      throw remarks.refuse(
          first,
          "there is only one column of numbers: " + Remarks.excerpt(lines.text(first)),
          "each line needs a frequency in Hz and a level in dB");
    }
    DecimalMark mark = DecimalMark.of(lines, sample, separator, table, remarks);
    ColumnRoles roles = new ColumnRoles(table, titles, remarks);
    Columns columns = roles.columns();
    return new Dialect(separator, mark, table, titles, columns, roles.unit(columns));
  }

  private static int firstFitting(
      Lines lines, Sample sample, Separator separator, SampleTable table) {
    Fields fields = new Fields();
    for (int line : sample.lines()) {
      fields.cut(lines, line, separator);
      if (table.fits(fields) && fields.looseNumbers() >= 2) {
        return line;
      }
    }
    return sample.first();
  }

  private static void refuseDoubtfulCommas(
      Lines lines, Sample sample, SampleTable table, Remarks remarks) throws UnusableInput {
    var line = Separator.doubtfulComma(lines, sample, table);
    if (line.isPresent()) {
      throw remarks.refuse(
          line.get(),
          "the commas may part columns or be decimal marks: "
              + Remarks.excerpt(lines.text(line.get())),
          "part columns by semicolons or tabs, or title every column in a header");
    }
  }
}
