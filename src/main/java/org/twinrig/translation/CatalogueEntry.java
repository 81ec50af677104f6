package org.twinrig.translation;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.twinrig.response.Smoothing;

/**
 * One row of catalogue.csv: an old graph, made on the old fixture.
 *
 * @param kind the unit's kind, or {@link Translation#UNKNOWN_KIND}
 * @param file the file as the lab wrote it, relative to the table
 * @param subtracted the curve that was subtracted; nothing for a raw graph
 * @param smoothing what the graph was smoothed by; nothing when not stated
 * @param drive what the unit was driven with, such as {@code 1 V}, where the graph's level is
 *     absolute: dB SPL; nothing for a relative graph, of which only the shape counts
 * @param pads the ear pads or tips it was made with; empty when not stated
 * @param confirmed what the lab answers to doubts about the graph; empty when nothing
 * @param line the line of catalogue.csv, from 1
 */
public record CatalogueEntry(
    String graph,
    String unit,
    String kind,
    String file,
    Averaged averaged,
    Optional<Subtracted> subtracted,
    Optional<Smoothing> smoothing,
    Optional<String> drive,
    String pads,
    String confirmed,
    int line) {

  public CatalogueEntry {
    if (graph.isBlank() || unit.isBlank() || kind.isBlank() || file.isBlank()) {
      throw new IllegalArgumentException("a graph needs a name, a unit, a kind and a file");
    }
    Objects.requireNonNull(averaged, "averaged");
    Objects.requireNonNull(subtracted, "subtracted");
    Objects.requireNonNull(smoothing, "smoothing");
    if (drive.isPresent() && subtracted.isPresent()) {
      throw new IllegalArgumentException("a compensated graph has no absolute level");
    }
  }

  /** A raw graph, relative. */
  public static CatalogueEntry raw(String graph, String kind, int seatings) {
    return new CatalogueEntry(
        graph,
        graph,
        kind,
        "none",
        Averaged.overSeatings(seatings),
        Optional.empty(),
        Optional.of(Smoothing.NONE),
        Optional.empty(),
        "",
        "",
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
   * What a graph averages.
   *
   * @param seatings how many seatings; nothing when not known
   * @param sides how many sides of each seating, 1 or 2; nothing when not known
   * @param how how the seatings were made one
   */
  public record Averaged(OptionalInt seatings, OptionalInt sides, Averaging how) {

    /** In decibels, as the study averages. */
    public Averaged(OptionalInt seatings, OptionalInt sides) {
      this(seatings, sides, Averaging.DB);
    }

    public Averaged {
      Objects.requireNonNull(how, "how");
      if (seatings.isPresent() && seatings.getAsInt() < 1) {
        throw new IllegalArgumentException("seatings must be 1 or more");
      }
      if (sides.isPresent() && sides.getAsInt() != 1 && sides.getAsInt() != 2) {
        throw new IllegalArgumentException("sides must be 1 or 2");
      }
    }

    /** Over seatings whose sides are as in the study. */
    public static Averaged overSeatings(int seatings) {
      return new Averaged(OptionalInt.of(seatings), OptionalInt.empty());
    }

    /**
     * How many seatings of the study the graph counts as: {@code m·(its sides / the study's
     * sides)}, because the sides of a seating scatter each by itself. One seating when the number
     * is not known, the cautious choice, and where only the best was kept; sides as in the study
     * when theirs is not.
     */
    public double asSeatingsOf(double studySides) {
      return taken() * ofEach(studySides);
    }

    /** How many seatings the graph is taken to average. */
    public int taken() {
      return how == Averaging.BEST_SEAL ? 1 : seatings.orElse(1);
    }

    /** How many seatings of the study one seating of the graph counts as. */
    double ofEach(double studySides) {
      return sides.isPresent() ? sides.getAsInt() / studySides : 1;
    }
  }

  /** How an old graph was made of several seatings. */
  public enum Averaging {
    /** The mean of their levels in decibels, as the study makes it. */
    DB("db"),
    /** The mean of their powers, which reads higher. */
    POWER("power"),
    /** The seating with the best seal was kept, the others were not. */
    BEST_SEAL("best seal");

    private final String word;

    Averaging(String word) {
      this.word = word;
    }

    /** The word of catalogue.csv: for example {@code best seal}. */
    public String word() {
      return word;
    }
  }

  /** Whether the graph's level is known. */
  public Level level() {
    return drive.isPresent() ? Level.ABSOLUTE : Level.RELATIVE;
  }

  /** Whether the level of a graph is known, or its shape alone. */
  public enum Level {
    RELATIVE,
    /** dB SPL (re 20 µPa) at a stated drive. */
    ABSOLUTE;

    /** The level as files write it: for example {@code relative}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What the graph is taken to be smoothed by: as stated; none when not stated. */
  public Smoothing statedSmoothing() {
    return smoothing.orElse(Smoothing.NONE);
  }
}
