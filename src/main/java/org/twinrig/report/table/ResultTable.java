package org.twinrig.report.table;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Spreadsheet;

/** A result file being written: comma-separated, UTF-8, one header line, cells by kind of value. */
final class ResultTable {
  private static final int HZ_DECIMALS = 4;
  private static final int DB_DECIMALS = 6;

  private final StringWriter text = new StringWriter();
  private final CsvWriter writer;
  private final int width;
  private List<String> row = new ArrayList<>();

  ResultTable(String... columns) {
    this.writer = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text);
    this.width = columns.length;
    writer.writeRecord(columns);
  }

  /** A text from the lab: one that a spreadsheet would run as a formula gets an apostrophe. */
  ResultTable text(String value) {
    row.add(Spreadsheet.runsAsFormula(value) ? "'" + value : value);
    return this;
  }

  /** A word of ours. */
  ResultTable word(String value) {
    row.add(value);
    return this;
  }

  ResultTable count(long value) {
    row.add(Long.toString(value));
    return this;
  }

  ResultTable hz(double value) {
    row.add(Numbers.fixed(value, HZ_DECIMALS));
    return this;
  }

  /** Decibels, octaves and shares. */
  ResultTable number(double value) {
    row.add(Numbers.fixed(value, DB_DECIMALS));
    return this;
  }

  ResultTable number(OptionalDouble value) {
    row.add(value.isPresent() ? Numbers.fixed(value.getAsDouble(), DB_DECIMALS) : "");
    return this;
  }

  /** Cells that are not defined. */
  ResultTable empty(int cells) {
    for (int k = 0; k < cells; k++) {
      row.add("");
    }
    return this;
  }

  void endRow() {
    if (row.size() != width) {
      throw new IllegalStateException("a row needs " + width + " cells, but has " + row.size());
    }
    writer.writeRecord(row);
    row = new ArrayList<>(width);
  }

  void write(Path file) throws IOException {
    writer.flush();
    Files.writeString(file, text.toString(), StandardCharsets.UTF_8);
  }
}
