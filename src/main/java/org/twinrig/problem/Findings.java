package org.twinrig.problem;

import java.util.List;

/**
 * What could be read, together with everything that could not.
 *
 * @param <T> what was read
 * @param value what was read; complete but for the refused items
 * @param problems in the order of the files and their lines
 */
public record Findings<T>(T value, List<Problem> problems) {

  public Findings {
    problems = List.copyOf(problems);
  }

  /** The problems that cost an item: in order, possibly empty. */
  public List<Problem> refused() {
    return problems.stream().filter(p -> p.kind() == Problem.Kind.REFUSED).toList();
  }
}
