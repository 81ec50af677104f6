package org.twinrig.intake;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which column of a capture text is what. Columns count from 1.
 *
 * @param level the level in dB
 * @param phase the phase, when there is one; it is not used
 * @param unused the other columns, in order
 * @param titles the columns' titles from the header; empty when there is none
 */
public record Columns(
    int frequency, int level, OptionalInt phase, List<Integer> unused, List<String> titles) {

  public Columns {
    if (frequency < 1 || level < 1 || frequency == level) {
      throw new IllegalArgumentException("frequency and level need a column each, from 1");
    }
    unused = List.copyOf(unused);
    titles = List.copyOf(titles);
  }

  /**
   * A column's title.
   *
   * @param column from 1
   * @return the title as the file has it, or nothing when it has none
   */
  public Optional<String> title(int column) {
    return column <= titles.size() && !titles.get(column - 1).isBlank()
        ? Optional.of(titles.get(column - 1))
        : Optional.empty();
  }

  /** A column inside a message: its number, and its title when it has one. */
  String named(int column) {
    return title(column).map(t -> column + " " + Remarks.excerpt(t)).orElse("" + column);
  }
}
