package org.twinrig.translation;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.twinrig.response.Smoothing;

/**
 * One row of catalogue.csv: an old graph, made on the old fixture.
 *
 * @param graph its name
 * @param unit the unit it shows
 * @param kind the unit's kind, or {@link Translation#UNKNOWN_KIND}
 * @param file the file as the lab wrote it, relative to the table
 * @param seatings how many seatings were averaged; nothing when not known
 * @param subtracted the curve that was subtracted; nothing for a raw graph
 * @param smoothing what the graph was smoothed by; nothing when not stated
 * @param line the line of catalogue.csv, from 1
 */
public record CatalogueEntry(
    String graph,
    String unit,
    String kind,
    String file,
    OptionalInt seatings,
    Optional<Subtracted> subtracted,
    Optional<Smoothing> smoothing,
    int line) {

  /** Checks names and number. */
  public CatalogueEntry {
    if (graph.isBlank() || unit.isBlank() || kind.isBlank() || file.isBlank()) {
      throw new IllegalArgumentException("a graph needs a name, a unit, a kind and a file");
    }
    if (seatings.isPresent() && seatings.getAsInt() < 1) {
      throw new IllegalArgumentException("seatings must be 1 or more");
    }
    Objects.requireNonNull(subtracted, "subtracted");
    Objects.requireNonNull(smoothing, "smoothing");
  }

  /**
   * A raw graph.
   *
   * @param graph its name, and that of its unit
   * @param kind the unit's kind
   * @param seatings how many seatings were averaged
   * @return the entry; not smoothed, of no file
   */
  public static CatalogueEntry raw(String graph, String kind, int seatings) {
    return new CatalogueEntry(
        graph,
        graph,
        kind,
        "none",
        OptionalInt.of(seatings),
        Optional.empty(),
        Optional.of(Smoothing.NONE),
        1);
  }

  /**
   * What was subtracted from a compensated graph.
   *
   * @param file the curve's file as the lab wrote it; nothing for the study's own reference of the
   *     old fixture
   * @param smoothing of the curve; nothing when not stated
   */
  public record Subtracted(Optional<String> file, Optional<Smoothing> smoothing) {}

  /**
   * How many seatings the graph is taken to average.
   *
   * @return the number the lab gave, or 1 when it is not known: the cautious choice
   */
  public int averagedSeatings() {
    return seatings.orElse(1);
  }

  /**
   * What the graph is taken to be smoothed by.
   *
   * @return as stated; none when not stated
   */
  public Smoothing statedSmoothing() {
    return smoothing.orElse(Smoothing.NONE);
  }
}
