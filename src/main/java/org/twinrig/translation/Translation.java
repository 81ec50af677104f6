package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.study.Tolerance;

/**
 * All that is needed to re-express old graphs elsewhere, without the captures.
 *
 * @param anchor where the study's captures were pinned, and a graph is before a window looks at it
 * @param tolerance how far a translated level may be off
 * @param minUnits with fewer units than this a band is unreliable
 * @param kinds one transfer function per kind, each with its marks
 */
public record Translation(
    Origin origin,
    Anchor anchor,
    BandGrid grid,
    double confidence,
    Tolerance tolerance,
    int minUnits,
    Handling handling,
    List<TransferFunction> kinds) {

  /** The kind the lab writes when it does not know. */
  public static final String UNKNOWN_KIND = "unknown";

  public Translation {
    Checks.fraction(confidence, "confidence");
    kinds = List.copyOf(kinds);
  }

  /**
   * What study a translation came from.
   *
   * @param anchor where levels were pinned, in words
   */
  public record Origin(String title, String from, String to, String anchor, String fingerprint) {}

  /**
   * How graphs are taken and given.
   *
   * @param captureSmoothing what the study's captures were smoothed by
   * @param sidesPerSeating how many sides a seating on the old fixture averages, 1 to 2
   * @param oldReference the curve the lab subtracts from graphs made on the old fixture, if any
   * @param newReference the curve it subtracts on the new fixture, if any
   */
  public record Handling(
      Smoothing captureSmoothing,
      double sidesPerSeating,
      PublishingRule publishing,
      Optional<ReferenceCurve> oldReference,
      Optional<ReferenceCurve> newReference) {
    public Handling {
      if (!(sidesPerSeating >= 1 && sidesPerSeating <= 2)) {
        throw new IllegalArgumentException(
            "a seating has 1 to 2 sides, but " + sidesPerSeating + " were given");
      }
    }

    /** Captures as measured, one side a seating, the standard rule, no reference curves. */
    public static Handling plain() {
      return new Handling(
          Smoothing.NONE, 1, PublishingRule.standard(), Optional.empty(), Optional.empty());
    }

    /** The same handling with another curve of the new fixture. */
    public Handling withNewReference(ReferenceCurve reference) {
      return new Handling(
          captureSmoothing, sidesPerSeating, publishing, oldReference, Optional.of(reference));
    }
  }

  /** The same translation with other handling of graphs. */
  public Translation withHandling(Handling other) {
    return new Translation(origin, anchor, grid, confidence, tolerance, minUnits, other, kinds);
  }

  /** The same translation with other transfers. */
  public Translation withKinds(List<TransferFunction> other) {
    return new Translation(origin, anchor, grid, confidence, tolerance, minUnits, handling, other);
  }

  /** The kinds with fewer units than the study asks for: nothing they translate is reliable. */
  public List<TransferFunction> kindsWithTooFewUnits() {
    return kinds.stream().filter(k -> k.units() < minUnits).toList();
  }

  /** The transfer function of a kind. */
  public Optional<TransferFunction> kind(String kind) {
    return kinds.stream().filter(k -> k.kind().equals(kind)).findFirst();
  }

  /** The kinds a graph of unknown kind is held to be one of: passive ones with enough units. */
  public List<TransferFunction> candidatesForUnknown() {
    return kinds.stream().filter(k -> k.units() >= minUnits && Unit.passive(k.kind())).toList();
  }
}
