package org.twinrig.intake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
  private final List<String> names;
  private final List<TableText.Line> lines;

  private LabTable(String source, Columns columns, List<String> names, List<TableText.Line> lines) {
    this.source = source;
    this.columns = columns;
    this.names = names;
    this.lines = lines;
  }

  /**
   * Reads a table whose header is sound.
   *
   * @param source how problems name it
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
    List<String> names = new TableHeader(source, lines.get(0), columns).names();
    return new LabTable(source, columns, names, lines.subList(1, lines.size()));
  }

  /** How problems name the table. */
  public String source() {
    return source;
  }

  /** The columns the table has: in its own order. */
  public List<String> columnNames() {
    return names;
  }

  /** How many rows there are, sound or not: 0 or more. */
  public int size() {
    return lines.size();
  }

  /**
   * What stands in one column, including rows a reader would refuse.
   *
   * @return cells in order, as written; rows too short to reach the column left out
   */
  public List<String> cells(String column) {
    int position = names.indexOf(column);
    return lines.stream()
        .filter(line -> position >= 0 && position < line.cells().size())
        .map(line -> line.cells().get(position))
        .toList();
  }

  /**
   * Reads every row.
   *
   * @param reader takes a row's cells and ends with {@link LabRow#ifSound}
   * @return what the sound rows became, in order, and every problem in order
   */
  public <T> Findings<List<T>> read(Function<LabRow, Optional<T>> reader) {
    List<T> values = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (TableText.Line line : lines) {
      if (line.cells().size() == names.size()) {
        LabRow row = new LabRow(source, line.number(), name -> cell(line, name));
        reader.apply(row).ifPresent(values::add);
        problems.addAll(row.problems());
      } else {
        problems.add(wrongCount(line));
      }
    }
    return new Findings<>(List.copyOf(values), problems);
  }

  private String cell(TableText.Line line, String name) {
    if (!columns.all().contains(name)) {
      throw new IllegalArgumentException("column " + name + " was not declared for " + source);
    }
    int position = names.indexOf(name);
    return position < 0 ? "" : line.cells().get(position);
  }

  private Problem wrongCount(TableText.Line line) {
    int cells = line.cells().size();
    return Problem.refused(
        source,
        line.number(),
        "the row has " + cells + " cells, but the header names " + names.size() + " columns",
        cells < names.size()
            ? "write a comma for every cell left empty"
            : "put quotes around a cell that holds a comma");
  }
}
