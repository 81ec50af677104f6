package org.twinrig.translation;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * One row of catalogue.csv: an old graph, made on the old fixture.
 *
 * @param graph its name
 * @param unit the unit it shows
 * @param kind the unit's kind, or {@link Translation#UNKNOWN_KIND}
 * @param file the file as the lab wrote it, relative to the table
 * @param seatings how many seatings were averaged; nothing when not known
 * @param reference the curve that was subtracted; nothing for a raw graph
 * @param smoothing as the lab wrote it; may be empty
 * @param line the line of catalogue.csv, from 1
 */
public record CatalogueEntry(
    String graph,
    String unit,
    String kind,
    String file,
    OptionalInt seatings,
    Optional<String> reference,
    String smoothing,
    int line) {

  /** Checks names and number. */
  public CatalogueEntry {
    if (graph.isBlank() || unit.isBlank() || kind.isBlank() || file.isBlank()) {
      throw new IllegalArgumentException("a graph needs a name, a unit, a kind and a file");
    }
    if (seatings.isPresent() && seatings.getAsInt() < 1) {
      throw new IllegalArgumentException("seatings must be 1 or more");
    }
  }

  /**
   * How many seatings the graph is taken to average.
   *
   * @return the number the lab gave, or 1 when it is not known: the cautious choice
   */
  public int averagedSeatings() {
    return seatings.orElse(1);
  }
}
