package org.twinrig.intake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * A table a lab keeps by hand, as text or as a sheet of a spreadsheet: cells separated by commas,
 * semicolons or tabs, one header line of names in lower_snake_case, {@code #} for a comment line,
 * quotes around a cell that holds a separator, a quote or a line break. Columns that begin with
 * {@code x_} are the lab's own. Cells are kept as written, spaces included; lines without any text
 * are skipped.
 */
public final class LabTable {

  /**
   * The columns a table may have: without the required ones it is of no use.
   *
   * @param table what its sheet is called in a spreadsheet of several
   */
  public record Columns(String table, List<String> required, List<String> optional) {
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

  /** Of captures.csv. */
  public static final Columns CAPTURES =
      new Columns(
          "captures",
          List.of("unit", "fixture", "side", "seating", "file"),
          List.of("session", "exclude", "note", "confirmed"));

  /** Of units.csv. */
  public static final Columns UNITS =
      new Columns(
          "units",
          List.of("unit", "kind"),
          List.of("role", "pads", "state", "impedance_ohm", "exclude", "note", "confirmed"));

  private final String source;
  private final Columns columns;
  private final List<String> names;
  private final List<TableText.Line> lines;
  private final TableText.Content content;

  private LabTable(Columns columns, List<String> names, TableText.Content content) {
    this.source = content.source();
    this.columns = columns;
    this.names = names;
    this.content = content;
    this.lines = content.lines().subList(1, content.lines().size());
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
    TableText.Content content = TableText.read(file, source, columns);
    if (content.lines().isEmpty()) {
      throw UnusableInput.fatal(
          content.source(),
          0,
          "holds no header line",
          "name the columns in the first line: " + String.join(",", columns.required()));
    }
    List<String> names = header(content.source(), content.lines().get(0), columns);
    return new LabTable(columns, names, content);
  }

  /** The names of the columns, judged against those the table may have. */
  private static List<String> header(String source, TableText.Line header, Columns columns)
      throws UnusableInput {
    List<String> names = header.cells().stream().map(String::strip).toList();
    List<Problem> problems = new ArrayList<>();
    BiConsumer<String, String> fatal =
        (what, remedy) -> problems.add(Problem.fatal(source, header.number(), what, remedy));
    Set<String> guessed = new HashSet<>();
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      if (name.isEmpty()) {
        fatal.accept("a column has no name", "name it, or take its comma away from every line");
      } else if (!columns.all().contains(name) && !LabRow.isOwn(name)) {
        NearestName.among(name, columns.all()).ifPresent(guessed::add);
        fatal.accept(
            "unknown column `" + name + "`",
            NearestName.question(name, columns.all())
                + "known columns here: "
                + String.join(", ", columns.all()));
      } else if (!seen.add(name)) {
        fatal.accept("column `" + name + "` is there twice", "keep one of them");
      }
    }
    String needed = "add it; the table needs " + String.join(", ", columns.required());
    columns.required().stream()
        .filter(name -> !names.contains(name) && !guessed.contains(name))
        .forEach(name -> fatal.accept("lacks the column `" + name + "`", needed));
    if (!problems.isEmpty()) {
      throw new UnusableInput(problems);
    }
    return names;
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

  /** Why rows are left out, by what stands in the column that names them; those with a reason. */
  public Map<String, String> leftOut(String name) {
    Map<String, String> reasons = new LinkedHashMap<>();
    for (TableText.Line line : lines) {
      if (line.cells().size() == names.size() && !cell(line, "exclude").isBlank()) {
        reasons.putIfAbsent(cell(line, name), cell(line, "exclude").strip());
      }
    }
    return reasons;
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
    if (!content.readAs().isEmpty()) {
      problems.add(Problem.note(source, 0, "is read as a table with " + content.readAs()));
    }
    for (TableText.Line line : lines) {
      if (line.cells().size() == names.size()) {
        LabRow row =
            new LabRow(
                source, line.number(), name -> cell(line, name), names, content.decimalCommas());
        reader.apply(row).ifPresent(values::add);
        problems.addAll(row.problems());
      } else {
        problems.add(wrongCount(line));
      }
    }
    return new Findings<>(List.copyOf(values), problems);
  }

  private String cell(TableText.Line line, String name) {
    if (!columns.all().contains(name) && !LabRow.isOwn(name)) {
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
