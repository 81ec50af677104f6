package org.twinrig.workbench.view;

import java.util.List;

/**
 * The contents of the book: every unit with how its captures stand.
 *
 * @param frame around it
 * @param doubt how many captures are in doubt, in a sentence
 * @param doubted the units they are of
 * @param ruled the units of which a rule of screening left captures out
 * @param kinds units by kind
 * @param problems met while reading
 * @param entries what was done since the workbench was opened
 */
public record ContentsView(
    Frame frame,
    String doubt,
    List<Doubted> doubted,
    List<Doubted> ruled,
    List<Kind> kinds,
    List<String> problems,
    List<Entry> entries) {

  public ContentsView {
    doubted = List.copyOf(doubted);
    ruled = List.copyOf(ruled);
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
    entries = List.copyOf(entries);
  }

  /**
   * A unit of which screening doubts captures.
   *
   * @param unit the way to the first of them
   * @param count how many there are, in words
   * @param why what was found about them, in few words
   */
  public record Doubted(Link unit, String count, String why) {}

  /**
   * A line of the book.
   *
   * @param state the number of the state the change led to
   * @param what was done
   */
  public record Entry(long state, String what) {}

  /**
   * The units of a kind.
   *
   * @param units in the order of the table
   */
  public record Kind(String name, List<Row> units) {
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
   * @param doubted how many captures are in doubt: screening doubts them, and they still count
   * @param leftOut how many do not count
   */
  public record Row(Link unit, String role, long from, long to, long doubted, long leftOut) {}
}
