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
  private static final char NONE = '-';

  public MarkRow {
    for (int b = 0; b < letters.length(); b++) {
      if (letters.charAt(b) != NONE && mark(letters.charAt(b)).isEmpty()) {
        throw new IllegalArgumentException("marks are written as R, C, U and -");
      }
    }
  }

  static MarkRow of(TranslatedGraph graph) {
    StringBuilder letters = new StringBuilder(graph.bands().size());
    for (TranslatedBand b : graph.bands()) {
      letters.append(b.missing() ? NONE : letter(b.mark()));
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
    return mark(letters.charAt(band));
  }

  private static char letter(Mark mark) {
    return switch (mark) {
      case RELIABLE -> 'R';
      case CAUTION -> 'C';
      case UNRELIABLE -> 'U';
    };
  }

  private static Optional<Mark> mark(char letter) {
    return switch (letter) {
      case 'R' -> Optional.of(Mark.RELIABLE);
      case 'C' -> Optional.of(Mark.CAUTION);
      case 'U' -> Optional.of(Mark.UNRELIABLE);
      default -> Optional.empty();
    };
  }
}
