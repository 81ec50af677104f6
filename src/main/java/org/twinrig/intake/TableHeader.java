package org.twinrig.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** The header line of a lab's table, judged against the columns it may have. */
final class TableHeader {
  private final String source;
  private final int line;
  private final List<String> names;
  private final LabTable.Columns columns;

  TableHeader(String source, TableText.Line line, LabTable.Columns columns) {
    this.source = source;
    this.line = line.number();
    this.names = line.cells().stream().map(String::strip).toList();
    this.columns = columns;
  }

  /** The names of the columns. */
  List<String> names() throws UnusableInput {
    List<Problem> problems = problems();
    if (!problems.isEmpty()) {
      throw new UnusableInput(problems);
    }
    return names;
  }

  private List<Problem> problems() {
    String first = names.get(0);
    if (names.size() == 1 && (first.indexOf(';') >= 0 || first.indexOf('\t') >= 0)) {
      // Other separators leave the header in one cell.
      return List.of(
          fatal(
              "the cells are separated by " + (first.indexOf(';') >= 0 ? "semicolons" : "tabs"),
              "save the table with commas between cells and a point as the decimal mark"));
    }
    List<Problem> problems = new ArrayList<>();
    Set<String> guessed = new HashSet<>();
    Set<String> seen = new HashSet<>();
    for (String name : names) {
      if (!columns.all().contains(name)) {
        problems.add(unknown(name, guessed));
      } else if (!seen.add(name)) {
        problems.add(fatal("column `" + name + "` is there twice", "keep one of them"));
      }
    }
    String needed = "add it; the table needs " + String.join(", ", columns.required());
    columns.required().stream()
        .filter(name -> !names.contains(name) && !guessed.contains(name))
        .map(name -> fatal("lacks the column `" + name + "`", needed))
        .forEach(problems::add);
    return problems;
  }

  private Problem unknown(String name, Set<String> guessed) {
    if (name.isEmpty()) {
      return fatal("a column has no name", "name it, or take its comma away from every line");
    }
    Optional<String> near = NearestName.among(name, columns.all());
    near.ifPresent(guessed::add);
    String guess = near.map(n -> "did you mean `" + n + "`? ").orElse("");
    return fatal(
        "unknown column `" + name + "`",
        guess + "known columns here: " + String.join(", ", columns.all()));
  }

  private Problem fatal(String what, String remedy) {
    return Problem.fatal(source, line, what, remedy);
  }
}
