package org.twinrig.translation;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;

/**
 * How a graph was taken and given.
 *
 * @param smoothing how the graph's smoothing was met
 * @param levelShiftDb by how much an absolute graph was moved to be absolute on the new fixture,
 *     dB; nothing where it is given relative
 * @param before the curve that was added back; nothing for a raw graph
 * @param now the curve of the new fixture that was subtracted again; nothing where the result is
 *     raw
 * @param corrected whether it was made a mean of decibels, having averaged powers
 */
public record Treatment(
    SmoothingMatch smoothing,
    OptionalDouble levelShiftDb,
    Optional<Reference> before,
    Optional<Reference> now,
    boolean corrected) {
  /** A raw graph smoothed as the study's captures are. */
  public static final Treatment RAW =
      new Treatment(SmoothingMatch.ALIKE, Optional.empty(), Optional.empty());

  /** Of a relative graph that needs no correction for how it averages, or allows of none. */
  public Treatment(SmoothingMatch smoothing, Optional<Reference> before, Optional<Reference> now) {
    this(smoothing, OptionalDouble.empty(), before, now, false);
  }

  public Treatment {
    Objects.requireNonNull(smoothing, "smoothing");
    if (now.isPresent() && before.isEmpty()) {
      throw new IllegalArgumentException("a raw graph stays raw");
    }
  }

  /** How a graph averages its seatings, and whether that was met, as files write it. */
  public String averaging(CatalogueEntry.Averaging how) {
    return how != CatalogueEntry.Averaging.POWER
        ? how.word()
        : corrected ? "power corrected" : "power not corrected";
  }

  /** How the level of the graph as it is given is to be taken. */
  public CatalogueEntry.Level level() {
    return levelShiftDb.isPresent() ? CatalogueEntry.Level.ABSOLUTE : CatalogueEntry.Level.RELATIVE;
  }

  /**
   * A reference curve by name.
   *
   * @param file as the lab names it
   * @param smoothing of the curve; nothing when not stated
   */
  public record Reference(String file, Optional<Smoothing> smoothing) {
    static Reference of(ReferenceCurve curve) {
      return new Reference(curve.file(), curve.smoothing());
    }

    /** The smoothing in words: for example {@code smoothed to 1/2 octave}. */
    public String smoothingWords() {
      return smoothing.map(Smoothing::plain).orElse("smoothing not stated");
    }
  }

  /** How the smoothing of a graph was made to meet that of the study's captures. */
  public enum SmoothingMatch {
    /** Both are smoothed alike, or neither is. */
    ALIKE("alike"),
    /** The graph was smoothed as the study's captures are; so is the result. */
    GRAPH_SMOOTHED("graph smoothed as the captures"),
    /**
     * Both are smoothed over the same part of an octave, one in decibels and one in power; every
     * band is marked, unless it is wider than that.
     */
    OTHER_DOMAIN("other domain"),
    /** The study's captures were smoothed as the graph is before the fit. */
    STUDY_SMOOTHED("study smoothed as the graph"),
    /** The captures were not at hand, and every band is wider than the smoothing. */
    FINER_THAN_BANDS("finer than the bands"),
    /** The captures were not at hand; bands no wider than the smoothing are marked. */
    MARKED("marked");

    private final String word;

    SmoothingMatch(String word) {
      this.word = word;
    }

    /** The match as files write it: for example {@code study smoothed as the graph}. */
    public String word() {
      return word;
    }
  }
}
