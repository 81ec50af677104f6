package org.twinrig.translation;

import java.util.Optional;
import org.twinrig.reliability.Mark;

/**
 * The marks of a graph, band by band, as one letter each: {@code R} reliable, {@code C} caution,
 * {@code U} unreliable, {@code -} where the graph has no level.
 *
 * @param letters one per band
 */
public record MarkRow(String letters) {
  private static final String KNOWN = "RCU-";

  /** Checks the letters. */
  public MarkRow {
    if (letters.chars().anyMatch(c -> KNOWN.indexOf(c) < 0)) {
      throw new IllegalArgumentException("marks are written as R, C, U and -");
    }
  }

  static MarkRow of(TranslatedGraph graph) {
    StringBuilder letters = new StringBuilder(graph.bands().size());
    for (TranslatedBand b : graph.bands()) {
      letters.append(b.missing() ? '-' : KNOWN.charAt(b.mark().ordinal()));
    }
    return new MarkRow(letters.toString());
  }

  /**
   * The mark of a band.
   *
   * @param band position in the grid
   * @return the mark; nothing where the graph has no level
   */
  public Optional<Mark> at(int band) {
    char letter = letters.charAt(band);
    return letter == '-' ? Optional.empty() : Optional.of(Mark.values()[KNOWN.indexOf(letter)]);
  }
}
