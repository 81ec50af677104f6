package org.twinrig.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.twinrig.problem.UnusableInput;

/**
 * A lab's table in which one cell is written anew: every other byte stays as it is, with comments,
 * the order of the columns, quotes and line ends.
 *
 * <p>What separates cells, quotes and line ends are single bytes that are part of no other letter
 * in UTF-8 and in Latin-1, so the table is cut as bytes; it keeps its letters and its separator.
 * Rows are found as {@link LabTable} counts them.
 */
public final class MendedTable {
  /** The file's bytes, one letter each. */
  private final String table;

  private final List<Row> rows = new ArrayList<>();

  /** A cell as a range of bytes, quotes included. */
  private record Cell(int from, int to) {}

  /** A row, the line it begins in from 1, and its cells. */
  private record Row(int line, List<Cell> cells) {
    int end() {
      return cells.get(cells.size() - 1).to();
    }
  }

  private final TableForm form;
  private final String source;

  /**
   * Of a file that {@link LabTable} can read.
   *
   * @param source how problems name it
   * @throws UnusableInput where it cannot be mended in place: a spreadsheet, or UTF-16
   */
  public MendedTable(byte[] bytes, String source) throws UnusableInput {
    this.source = source;
    form = TableForm.of(bytes);
    if (Workbook.is(bytes) || !form.isBytewise()) {
      throw UnusableInput.fatal(
          source,
          0,
          "is " + (Workbook.is(bytes) ? "a spreadsheet" : "UTF-16 text") + " and is only read",
          "write into it where it was made, or save it as CSV (UTF-8) and name that in study.yaml");
    }
    table = new String(bytes, StandardCharsets.ISO_8859_1);
    cut();
  }

  /**
   * The table with one cell written anew. A table that lacks the column gets it as its last one.
   *
   * @param line the line the row begins in, from 1
   * @param text what the cell shall say; without line breaks
   * @return the whole file
   * @throws IllegalArgumentException when no row begins in the line, or the text has a line break
   * @throws UnusableInput when the table's letters have none for a letter of the text
   */
  public byte[] with(int line, String column, String text) throws UnusableInput {
    if (!form.canWrite(text)) {
      throw UnusableInput.fatal(
          source, line, "cannot hold `" + text + "`, being Latin-1 text", "save it as UTF-8");
    }
    if (text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
      throw new IllegalArgumentException("a cell is written on one line");
    }
    Row row =
        rows.stream()
            .skip(1)
            .filter(r -> r.line() == line)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no row begins in line " + line));
    int position = rows.get(0).cells().stream().map(this::plain).toList().indexOf(column);
    if (position >= 0) {
      Cell cell = row.cells().get(position);
      String after = table.substring(cell.to());
      return bytes(table.substring(0, cell.from()) + written(text) + after);
    }
    StringBuilder changed = new StringBuilder();
    int at = 0;
    for (Row each : rows) {
      String cell = each.equals(rows.get(0)) ? column : each.equals(row) ? written(text) : "";
      changed.append(table, at, each.end()).append(form.separator()).append(cell);
      at = each.end();
    }
    return bytes(changed.append(table, at, table.length()).toString());
  }

  /** A table in which cells of one column are written anew, by the lines their rows begin in. */
  public static byte[] with(
      byte[] bytes, String source, String column, SortedMap<Integer, String> cells)
      throws UnusableInput {
    byte[] after = bytes;
    // From the last on: a cell of several lines that becomes one moves the rows below it.
    List<Integer> lines = new ArrayList<>(cells.keySet());
    for (int k = lines.size() - 1; k >= 0; k--) {
      after = new MendedTable(after, source).with(lines.get(k), column, cells.get(lines.get(k)));
    }
    return after;
  }

  private static byte[] bytes(String table) {
    return table.getBytes(StandardCharsets.ISO_8859_1);
  }

  private String plain(Cell cell) {
    byte[] bytes = bytes(table.substring(cell.from(), cell.to()));
    String written = new String(bytes, form.charset()).strip();
    boolean quoted = written.length() > 1 && written.startsWith("\"") && written.endsWith("\"");
    return quoted ? written.substring(1, written.length() - 1).replace("\"\"", "\"") : written;
  }

  private String written(String text) {
    boolean quoted =
        text.indexOf(form.separator()) >= 0 || text.indexOf('"') >= 0 || !text.equals(text.strip());
    String cell = quoted ? '"' + text.replace("\"", "\"\"") + '"' : text;
    return new String(cell.getBytes(form.charset()), StandardCharsets.ISO_8859_1);
  }

  private void cut() {
    int at = table.startsWith("\u00EF\u00BB\u00BF") ? 3 : 0;
    int line = 1;
    while (at < table.length()) {
      List<Cell> cells = new ArrayList<>();
      int end = table.charAt(at) == '#' ? lineEnd(at) : cells(at, cells);
      if (!cells.stream().allMatch(c -> plain(c).isBlank())) {
        rows.add(new Row(line, List.copyOf(cells)));
      }
      for (; at <= end && at < table.length(); at++) {
        line += isLineEnd(at) ? 1 : 0;
      }
    }
  }

  /** Cuts the cells of the row that begins here and answers where its line end ends. */
  private int cells(int begin, List<Cell> cells) {
    int from = begin;
    boolean quoted = false;
    for (int at = begin; at < table.length(); at++) {
      char b = table.charAt(at);
      if (b == '"' && (quoted || at == from)) {
        quoted = !quoted; // a doubled quote closes and opens again
      } else if (!quoted && b == '"' && table.charAt(at - 1) == '"') {
        quoted = true;
      } else if (!quoted && b == form.separator()) {
        cells.add(new Cell(from, at));
        from = at + 1;
      } else if (!quoted && (b == '\n' || b == '\r')) {
        cells.add(new Cell(from, at));
        return lineEnd(at);
      }
    }
    cells.add(new Cell(from, table.length()));
    return table.length();
  }

  /** The last byte of the first line end from here on. */
  private int lineEnd(int from) {
    int at = from;
    while (at < table.length() && !isLineEnd(at)) {
      at++;
    }
    return at;
  }

  /** Whether a line ends with this byte; of two that belong together it is the second. */
  private boolean isLineEnd(int at) {
    boolean first = at + 1 < table.length() && table.charAt(at + 1) == '\n';
    return table.charAt(at) == '\n' || (table.charAt(at) == '\r' && !first);
  }
}
