package org.twinrig.intake;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.twinrig.internal.AsideFile;
import org.twinrig.internal.OrdinaryFile;
import org.twinrig.problem.UnusableInput;

/**
 * A table of the lab's that rows are added to: what stands in it stays as it is, byte for byte,
 * with its comments, the order of its columns and its line ends.
 */
public final class GrowingTable {
  private final Path file;
  private final byte[] before;
  private final TableForm form;
  private final List<String> columns;
  private final Set<String> keys = new HashSet<>();
  private final Map<String, Map<String, String>> rows = new HashMap<>();

  private GrowingTable(Path file, byte[] before, TableForm form, List<String> columns) {
    this.file = file;
    this.form = form;
    this.before = before;
    this.columns = columns;
  }

  /**
   * Opens a table that can be read, or begins one with all columns it may have; {@code key} is the
   * column that tells rows apart.
   */
  public static GrowingTable open(Path file, LabTable.Columns known, String key)
      throws UnusableInput, IOException {
    if (!Files.exists(file)) {
      return new GrowingTable(file, new byte[0], TableForm.of(new byte[0]), known.all());
    }
    LabTable table = LabTable.of(file, file.toString(), known);
    byte[] bytes = OrdinaryFile.at(file).bytes(); // no more than the table's reader takes
    TableForm form = TableForm.of(bytes);
    if (Workbook.is(bytes) || !form.isBytewise()) {
      throw UnusableInput.fatal(
          file.toString(),
          0,
          "is no CSV, and rows can be added to CSV only",
          "save it as CSV (UTF-8)");
    }
    GrowingTable growing = new GrowingTable(file.toRealPath(), bytes, form, table.columnNames());
    growing.keys.addAll(table.cells(key));
    table.read(
        row -> {
          Map<String, String> cells = new HashMap<>();
          growing.columns.forEach(column -> cells.put(column, row.cell(column)));
          return Optional.ofNullable(growing.rows.putIfAbsent(row.cell(key), cells));
        });
    return growing;
  }

  /** Whether the table is there already: true when it holds anything. */
  public boolean exists() {
    return before.length > 0;
  }

  /** Whether a row is there already that has this in the column that tells rows apart. */
  public boolean has(String key) {
    return keys.contains(key);
  }

  /**
   * A cell as written of the first row with this key; nothing when there is no such row or column,
   * or the row has too few or too many cells.
   */
  public Optional<String> cell(String key, String column) {
    return Optional.ofNullable(rows.getOrDefault(key, Map.of()).get(column));
  }

  /** What the rows have in the column that tells them apart: in no order. */
  public Set<String> keys() {
    return Set.copyOf(keys);
  }

  /**
   * Adds rows at the end. Written beside the table and moved into its place.
   *
   * @param rows cells by column; a column the table lacks is left out, one not given stays empty
   * @throws IOException when it cannot be written, or the table was changed since it was opened
   */
  public void add(List<Map<String, String>> rows) throws IOException {
    byte[] now = Files.exists(file) ? OrdinaryFile.at(file).bytes() : new byte[0];
    if (!Arrays.equals(before, now)) {
      throw new IOException("it was changed by someone else meanwhile; run the command again");
    }
    String old = new String(before, form.charset());
    boolean windows = old.contains("\r\n");
    StringBuilder text = new StringBuilder(old);
    if (!old.isEmpty() && !old.endsWith("\n")) {
      text.append(windows ? "\r\n" : "\n");
    }
    String more = lines(rows, windows ? LineDelimiter.CRLF : LineDelimiter.LF);
    if (!form.canWrite(more)) {
      throw new IOException(
          "it is Latin-1 text, which lacks letters of the new rows; save it as UTF-8");
    }
    text.append(more);
    AsideFile.replace(file, aside -> Files.writeString(aside, text, form.charset()));
  }

  private String lines(List<Map<String, String>> rows, LineDelimiter end) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv =
        CsvWriter.builder().fieldSeparator(form.separator()).lineDelimiter(end).build(text)) {
      if (!exists()) {
        csv.writeRecord(columns);
      }
      for (Map<String, String> row : rows) {
        List<String> cells = new ArrayList<>();
        columns.forEach(column -> cells.add(row.getOrDefault(column, "")));
        csv.writeRecord(cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail to be written", e);
    }
    return text.toString();
  }
}
