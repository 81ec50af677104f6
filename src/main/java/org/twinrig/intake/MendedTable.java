package org.twinrig.intake;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A lab's table in which one cell is written anew: every other byte stays as it is, with comments,
 * the order of the columns, quotes and line ends.
 *
 * <p>Commas, quotes and line ends are single bytes that are part of no other letter in UTF-8, so
 * the table is cut as bytes. Rows are found as {@link LabTable} counts them.
 */
public final class MendedTable {
  private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  private final byte[] bytes;
  private final List<Row> rows = new ArrayList<>();

  /** A cell as a range of bytes, quotes included. */
  private record Cell(int from, int to) {}

  /** A row, the line it begins in from 1, and its cells. */
  private record Row(int line, List<Cell> cells) {
    int end() {
      return cells.get(cells.size() - 1).to();
    }
  }

  /** Bytes to be put in the place of a range. */
  private record Change(int from, int to, String text) {}

  /** Of a file that {@link LabTable} can read. */
  public MendedTable(byte[] bytes) {
    this.bytes = bytes.clone();
    cut();
  }

  /**
   * The table with one cell written anew. A table that lacks the column gets it as its last one.
   *
   * @param line the line the row begins in, from 1
   * @param text what the cell shall say; without line breaks
   * @return the whole file
   * @throws IllegalArgumentException when no row begins in the line, or the text has a line break
   */
  public byte[] with(int line, String column, String text) {
    if (text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
      throw new IllegalArgumentException("a cell is written on one line");
    }
    Row row =
        rows.stream()
            .skip(1)
            .filter(r -> r.line() == line)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no row begins in line " + line));
    int position = names().indexOf(column);
    if (position >= 0) {
      Cell cell = row.cells().get(position);
      return changed(List.of(new Change(cell.from(), cell.to(), written(text))));
    }
    List<Change> changes = new ArrayList<>();
    changes.add(new Change(rows.get(0).end(), rows.get(0).end(), "," + column));
    for (Row each : rows.subList(1, rows.size())) {
      String cell = each.equals(row) ? written(text) : "";
      changes.add(new Change(each.end(), each.end(), "," + cell));
    }
    return changed(changes);
  }

  private List<String> names() {
    return rows.get(0).cells().stream().map(this::plain).toList();
  }

  private String plain(Cell cell) {
    String written =
        new String(bytes, cell.from(), cell.to() - cell.from(), StandardCharsets.UTF_8).strip();
    boolean quoted = written.length() > 1 && written.startsWith("\"") && written.endsWith("\"");
    return quoted ? written.substring(1, written.length() - 1).replace("\"\"", "\"") : written;
  }

  private static String written(String text) {
    boolean quoted = text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || !text.equals(text.strip());
    return quoted ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }

  private byte[] changed(List<Change> changes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + 64);
    int at = 0;
    for (Change change : changes) {
      out.write(bytes, at, change.from() - at);
      out.writeBytes(change.text().getBytes(StandardCharsets.UTF_8));
      at = change.to();
    }
    out.write(bytes, at, bytes.length - at);
    return out.toByteArray();
  }

  private void cut() {
    int at = Arrays.mismatch(MARK, bytes) == MARK.length ? MARK.length : 0;
    int line = 1;
    while (at < bytes.length) {
      List<Cell> cells = new ArrayList<>();
      int end = bytes[at] == '#' ? lineEnd(at) : cells(at, cells);
      if (!cells.stream().allMatch(c -> plain(c).isBlank())) {
        rows.add(new Row(line, List.copyOf(cells)));
      }
      for (; at <= end && at < bytes.length; at++) {
        line += isLineEnd(at) ? 1 : 0;
      }
    }
  }

  /** Cuts the cells of the row that begins here and answers where its line end ends. */
  private int cells(int begin, List<Cell> cells) {
    int from = begin;
    boolean quoted = false;
    for (int at = begin; at < bytes.length; at++) {
      byte b = bytes[at];
      if (b == '"' && (quoted || at == from)) {
        quoted = !quoted; // a doubled quote closes and opens again
      } else if (!quoted && b == '"' && bytes[at - 1] == '"') {
        quoted = true;
      } else if (!quoted && b == ',') {
        cells.add(new Cell(from, at));
        from = at + 1;
      } else if (!quoted && (b == '\n' || b == '\r')) {
        cells.add(new Cell(from, at));
        return lineEnd(at);
      }
    }
    cells.add(new Cell(from, bytes.length));
    return bytes.length;
  }

  /** The last byte of the first line end from here on. */
  private int lineEnd(int from) {
    int at = from;
    while (at < bytes.length && !isLineEnd(at)) {
      at++;
    }
    return at;
  }

  /** Whether a line ends with this byte; of two that belong together it is the second. */
  private boolean isLineEnd(int at) {
    boolean first = at + 1 < bytes.length && bytes[at + 1] == '\n';
    return bytes[at] == '\n' || (bytes[at] == '\r' && !first);
  }
}
