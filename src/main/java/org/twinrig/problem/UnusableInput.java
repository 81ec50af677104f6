package org.twinrig.problem;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when the lab's files cannot give a result at all; says why, file by file. */
public final class UnusableInput extends Exception {
  private static final long serialVersionUID = 1L;

  /** Transient because a problem report is read where it is caught, never sent. */
  private final transient List<Problem> problems;

  /** Says why there is no result: at least one problem. */
  public UnusableInput(List<Problem> problems) {
    super(problems.stream().map(Problem::text).collect(Collectors.joining("\n")));
    if (problems.isEmpty()) {
      throw new IllegalArgumentException("needs at least one problem");
    }
    this.problems = List.copyOf(problems);
  }

  /** Says why there is no result, with the parts of one fatal {@link Problem}. */
  public static UnusableInput fatal(String source, int line, String what, String remedy) {
    return new UnusableInput(Problem.fatal(source, line, what, remedy));
  }

  /** Says why there is no result. */
  public UnusableInput(Problem problem) {
    this(List.of(problem));
  }

  /** Why there is no result: at least one problem. */
  public List<Problem> problems() {
    return problems;
  }
}
