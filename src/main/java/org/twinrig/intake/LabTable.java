package org.twinrig.intake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * A table a lab keeps by hand: UTF-8, cells separated by commas, one header line of names in
 * lower_snake_case, {@code #} for a comment line, quotes around a cell that holds a comma, a quote
 * or a line break. Cells are kept as written, spaces included; lines without any text are skipped.
 */
public final class LabTable {

  /**
   * The columns a table may have.
   *
   * @param required without these the table is of no use
   * @param optional these may be left out
   */
  public record Columns(List<String> required, List<String> optional) {

    public Columns {
      required = List.copyOf(required);
      optional = List.copyOf(optional);
      if (required.isEmpty()) {
        throw new IllegalArgumentException("a table needs at least one required column");
      }
    }

    /** All names, the required ones first: in the order they are documented. */
    public List<String> all() {
      return Stream.concat(required.stream(), optional.stream()).toList();
    }
  }

  private final String source;
  private final Columns columns;
  private final Map<String, Integer> positions;
  private final List<TableText.Line> lines;

  private LabTable(
      String source, Columns columns, Map<String, Integer> positions, List<TableText.Line> lines) {
    this.source = source;
    this.columns = columns;
    this.positions = positions;
    this.lines = lines;
  }

  /**
   * Reads a table whose header is sound.
   *
   * @param source how problems name it
   * @param columns the columns it may have
   * @return the table; rows with a wrong number of cells are found out by {@link #read}
   * @throws UnusableInput when the file cannot be read as such a table, or its header lacks a
   *     required column, repeats one or has one that is not known
   */
  public static LabTable of(Path file, String source, Columns columns) throws UnusableInput {
    List<TableText.Line> lines = TableText.read(file, source);
    if (lines.isEmpty()) {
      throw new UnusableInput(
          Problem.fatal(
              source,
              0,
              "holds no header line",
              "name the columns in the first line: " + String.join(",", columns.required())));
    }
    TableHeader header = new TableHeader(source, lines.get(0), columns);
    List<Problem> problems = header.problems();
    if (!problems.isEmpty()) {
      throw new UnusableInput(problems);
    }
    Map<String, Integer> positions = new LinkedHashMap<>();
    for (String name : header.names()) {
      positions.put(name, positions.size());
    }
    return new LabTable(source, columns, positions, lines.subList(1, lines.size()));
  }

  /** How problems name the table. */
  public String source() {
    return source;
  }

  /** The columns the table has: in its own order. */
  public List<String> columnNames() {
    return List.copyOf(positions.keySet());
  }

  /** How many rows there are, sound or not: 0 or more. */
  public int size() {
    return lines.size();
  }

  /**
   * What stands in one column, including rows a reader would refuse.
   *
   * @param column a column the table may have
   * @return cells in order, as written; rows too short to reach the column left out
   */
  public List<String> cells(String column) {
    int position = positions.getOrDefault(column, Integer.MAX_VALUE);
    return lines.stream()
        .filter(line -> position < line.cells().size())
        .map(line -> line.cells().get(position))
        .toList();
  }

  /**
   * Reads every row.
   *
   * @param <T> what a row becomes
   * @param reader takes a row's cells and ends with {@link LabRow#ifSound}
   * @return what the sound rows became, in order, and every problem in order
   */
  public <T> Findings<List<T>> read(Function<LabRow, Optional<T>> reader) {
    List<T> values = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (TableText.Line line : lines) {
      if (isWhole(line)) {
        LabRow row = row(line);
        reader.apply(row).ifPresent(values::add);
        problems.addAll(row.problems());
      } else {
        problems.add(wrongCount(line));
      }
    }
    return new Findings<>(List.copyOf(values), problems);
  }

  private LabRow row(TableText.Line line) {
    return new LabRow(source, line.number(), name -> cell(line, name));
  }

  private String cell(TableText.Line line, String name) {
    if (!columns.required().contains(name) && !columns.optional().contains(name)) {
      throw new IllegalArgumentException("column " + name + " was not declared for " + source);
    }
    Integer position = positions.get(name);
    return position == null ? "" : line.cells().get(position);
  }

  private boolean isWhole(TableText.Line line) {
    return line.cells().size() == positions.size();
  }

  private Problem wrongCount(TableText.Line line) {
    int cells = line.cells().size();
    int missing = positions.size() - cells;
    return Problem.refused(
        source,
        line.number(),
        "the row has " + cells + " cells, but the header names " + positions.size() + " columns",
        missing > 0
            ? "write a comma for every cell left empty"
            : "put quotes around a cell that holds a comma");
  }
}
