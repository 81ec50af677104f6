package org.twinrig.translation;

import java.util.Optional;
import org.twinrig.reliability.Mark;

/**
 * The marks of a graph, band by band, as one letter each: {@code R} reliable, {@code C} caution,
 * {@code U} unreliable, {@code -} where the graph has no level.
 */
public record MarkRow(String letters) {
  public MarkRow {
    if (!letters.matches("[RCU-]*")) {
      throw new IllegalArgumentException("marks are written as R, C, U and -");
    }
  }

  static MarkRow of(TranslatedGraph graph) {
    StringBuilder letters = new StringBuilder(graph.bands().size());
    for (TranslatedBand b : graph.bands()) {
      letters.append(b.missing() ? '-' : b.mark().name().charAt(0));
    }
    return new MarkRow(letters.toString());
  }

  /** The mark of a band: the mark; nothing where the graph has no level. */
  public Optional<Mark> at(int band) {
    return switch (letters.charAt(band)) {
      case 'R' -> Optional.of(Mark.RELIABLE);
      case 'C' -> Optional.of(Mark.CAUTION);
      case 'U' -> Optional.of(Mark.UNRELIABLE);
      default -> Optional.empty();
    };
  }
}
