package org.twinrig.workbench.view;

import java.util.List;

/**
 * The contents of the book: every unit with how its captures stand.
 *
 * @param frame around it
 * @param kinds units by kind
 * @param problems met while reading
 * @param entries what was done since the workbench was opened
 */
public record ContentsView(
    Frame frame, List<Kind> kinds, List<String> problems, List<String> entries) {

  /** Copies the lists. */
  public ContentsView {
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
    entries = List.copyOf(entries);
  }

  /**
   * The units of a kind.
   *
   * @param name of the kind
   * @param units in the order of the table
   */
  public record Kind(String name, List<Row> units) {
    /** Copies the list. */
    public Kind {
      units = List.copyOf(units);
    }
  }

  /**
   * A unit.
   *
   * @param unit the way to its page
   * @param role why it does not enter the fit; empty when it does
   * @param from captures on the old fixture
   * @param to captures on the new fixture
   * @param doubted how many captures screening doubts
   * @param leftOut how many do not count
   */
  public record Row(Link unit, String role, long from, long to, long doubted, long leftOut) {}
}
