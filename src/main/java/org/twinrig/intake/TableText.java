package org.twinrig.intake;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Splits the text of a lab's table into cells after RFC 4180. */
final class TableText {
  private static final int MOST_BYTES = 32 * 1024 * 1024;

  /**
   * Stands behind the last line while splitting: a quote that is never closed swallows it, which is
   * the only trace such a quote leaves.
   */
  private static final String END = "\u0001end";

  private static final Pattern FAILED_AT = Pattern.compile("started in line (\\d+)");

  private TableText() {}

  /** The cells of one row and the line it begins in, from 1. */
  record Line(int number, List<String> cells) {}

  static List<Line> read(Path file, String source) throws UnusableInput {
    String text = Utf8File.read(file, source, MOST_BYTES);
    List<Line> lines = split(text + "\n" + END, source);
    Line last = lines.remove(lines.size() - 1);
    if (!last.cells().equals(List.of(END))) {
      throw unclosed(source, last.number());
    }
    lines.removeIf(line -> line.cells().stream().allMatch(String::isBlank));
    return lines;
  }

  private static List<Line> split(String text, String source) throws UnusableInput {
    List<Line> lines = new ArrayList<>();
    CsvReader<CsvRecord> records =
        CsvReader.builder()
            .commentStrategy(CommentStrategy.SKIP)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .allowExtraCharsAfterClosingQuote(false)
            .ofCsvRecord(text);
    try {
      for (CsvRecord each : records) {
        lines.add(new Line((int) each.getStartingLineNumber(), List.copyOf(each.getFields())));
      }
    } catch (CsvParseException e) {
      throw strayQuote(source, e);
    }
    return lines;
  }

  private static UnusableInput strayQuote(String source, CsvParseException e) {
    Matcher line = FAILED_AT.matcher(String.valueOf(e.getMessage()));
    return new UnusableInput(
        Problem.fatal(
            source,
            line.find() ? Integer.parseInt(line.group(1)) : 0,
            "text follows the closing quote of a cell",
            "put the whole cell between quotes and write a quote inside it twice"));
  }

  private static UnusableInput unclosed(String source, int line) {
    return new UnusableInput(
        Problem.fatal(
            source,
            line,
            "a quote that opens in this row is never closed",
            "close it, or write it twice where it belongs to the text"));
  }
}
