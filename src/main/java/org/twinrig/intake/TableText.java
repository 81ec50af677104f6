package org.twinrig.intake;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.twinrig.problem.UnusableInput;

/** Splits the text of a lab's table into cells after RFC 4180. */
final class TableText {
  private static final int MOST_BYTES = 32 * 1024 * 1024;

  /**
   * With three times as many, study and translate still end in 400 MB where the rows' files are
   * missing; what files hold takes room as well.
   */
  private static final int MOST_ROWS = 100_000;

  private static final int MOST_CELLS = 1000;
  private static final int LONGEST_CELL = 100_000;

  /**
   * Stands behind the last line while splitting: a quote that is never closed swallows it, which is
   * the only trace such a quote leaves.
   */
  private static final String END = "\u0001end";

  private static final Pattern FAILED_AT = Pattern.compile("started in line (\\d+)");

  private TableText() {}

  /** The cells of one row and the line it begins in, from 1. */
  record Line(int number, List<String> cells) {}

  /**
   * What a table holds.
   *
   * @param lines the header and the rows with any text
   * @param decimalCommas whether numbers may be written with one
   * @param source how problems name it, with its sheet
   * @param readAs how it was understood where it is not written as we write tables; else empty
   */
  record Content(List<Line> lines, boolean decimalCommas, String source, String readAs) {
    Content {
      lines = List.copyOf(lines);
    }
  }

  static Content read(Path file, String source, LabTable.Columns columns) throws UnusableInput {
    byte[] bytes = Utf8File.bytes(file, source, MOST_BYTES);
    if (Workbook.is(bytes)) {
      return new Workbook(bytes, source).content(columns.table(), MOST_ROWS);
    }
    TableForm form = TableForm.of(bytes);
    if (form.isBytewise()) {
      Utf8File.refuseWhatIsNoText(bytes, source);
    }
    List<Line> lines = lines(form.text(bytes), form.separator(), source);
    return new Content(lines, form.decimalCommas(), source, form.readAs());
  }

  private static List<Line> lines(String text, char separator, String source) throws UnusableInput {
    List<Line> lines = split(text + "\n" + END, separator, source);
    Line last = lines.remove(lines.size() - 1);
    if (!last.cells().equals(List.of(END))) {
      throw UnusableInput.fatal(
          source,
          last.number(),
          "a quote that opens in this row is never closed",
          "close it, or write it twice where it belongs to the text");
    }
    lines.removeIf(line -> line.cells().stream().allMatch(String::isBlank));
    return lines;
  }

  private static List<Line> split(String text, char separator, String source) throws UnusableInput {
    List<Line> lines = new ArrayList<>();
    CsvReader<CsvRecord> records =
        CsvReader.builder()
            .fieldSeparator(separator)
            .commentStrategy(CommentStrategy.SKIP)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .allowExtraCharsAfterClosingQuote(false)
            .build(
                CsvRecordHandler.builder().maxFields(MOST_CELLS).maxFieldSize(LONGEST_CELL).build(),
                text);
    try {
      for (CsvRecord each : records) {
        lines.add(new Line((int) each.getStartingLineNumber(), List.copyOf(each.getFields())));
        if (lines.size() > MOST_ROWS + 2) { // with the header and the end
          throw tooMuch(
              source,
              lines.get(lines.size() - 2).number(),
              "the table goes on after " + MOST_ROWS + " rows",
              "split it into several tables");
        }
      }
    } catch (CsvParseException e) {
      throw unread(source, e);
    }
    return lines;
  }

  private static UnusableInput unread(String source, CsvParseException e) {
    Matcher at = FAILED_AT.matcher(String.valueOf(e.getMessage()));
    int line = at.find() ? Integer.parseInt(at.group(1)) : 0;
    String why = e.getCause() == null ? "" : String.valueOf(e.getCause().getMessage());
    if (why.contains("limit of")) {
      return tooMuch(
          source,
          line,
          "a row has more than " + MOST_CELLS + " cells",
          "check that this is the file you mean");
    }
    if (why.contains("max field size")) {
      return tooMuch(
          source,
          line,
          "a cell has more than " + LONGEST_CELL + " characters",
          "close the quote it begins with, or check that this is the file you mean");
    }
    return UnusableInput.fatal(
        source,
        line,
        "text follows the closing quote of a cell",
        "put the whole cell between quotes and write a quote inside it twice");
  }

  private static UnusableInput tooMuch(String source, int line, String what, String remedy) {
    return UnusableInput.fatal(source, line, what + ", which are the most that are read", remedy);
  }
}
