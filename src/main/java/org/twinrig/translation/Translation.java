package org.twinrig.translation;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.study.Study;
import org.twinrig.study.Tolerance;

/**
 * All that is needed to re-express old graphs elsewhere, without the captures.
 *
 * @param anchor where the study's captures were pinned, and a graph is before a window looks at it
 * @param tolerance how far a translated level may be off
 * @param minUnits with fewer units than this a band is unreliable
 * @param kinds one transfer function per kind, each with its marks
 * @param levelShifts by how much kinds read louder on the new fixture, of those where it is known
 */
public record Translation(
    Origin origin,
    Anchor anchor,
    BandGrid grid,
    double confidence,
    Tolerance tolerance,
    int minUnits,
    Handling handling,
    List<TransferFunction> kinds,
    List<LevelShift> levelShifts) {

  /** The kind the lab writes when it does not know. */
  public static final String UNKNOWN_KIND = "unknown";

  public Translation {
    Checks.fraction(confidence, "confidence");
    kinds = List.copyOf(kinds);
    levelShifts = List.copyOf(levelShifts);
  }

  /**
   * What study a translation came from, and which two specimens it belongs to.
   *
   * @param old the fixture that old graphs were made on
   * @param now the fixture they are re-expressed for
   * @param anchor where levels were pinned, in words
   * @param sessions first and last day of the study's sessions; nothing where they are not known
   * @param validUntil the last day for which the lab holds the study valid; nothing when not stated
   */
  public record Origin(
      String title,
      Fixture old,
      Fixture now,
      String anchor,
      String fingerprint,
      Optional<Study.Days> sessions,
      Optional<LocalDate> validUntil) {
    /** The doubt as files name it. */
    public static final String VALIDITY_PASSED = "validity passed";

    /** A study of two fixtures of which nothing is stated but their labels. */
    public Origin(String title, String from, String to, String anchor, String fingerprint) {
      this(
          title,
          new Fixture(from),
          new Fixture(to),
          anchor,
          fingerprint,
          Optional.empty(),
          Optional.empty());
    }

    /** What the old fixture is called. */
    public String from() {
      return old.label();
    }

    /** What the new fixture is called. */
    public String to() {
      return now.label();
    }

    /** The doubt about using the translation on a day; nothing up to the last day it is valid. */
    public Optional<Doubt> validityPassed(LocalDate used) {
      return validUntil
          .filter(used::isAfter)
          .map(
              last ->
                  Doubt.open(
                      Doubt.Subject.CATALOGUE,
                      "",
                      "",
                      VALIDITY_PASSED,
                      new Doubt.Found(
                          Numbers.count(ChronoUnit.DAYS.between(last, used), "day", "days"),
                          last.toString()),
                      "The study was to be used up to that day; pads, pinnae and microphones age.",
                      "No number is changed by it. Capture some units on both fixtures again; move"
                          + " `valid_until` in study.yaml if they still differ as they did."));
    }
  }

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
    return new Translation(
        origin, anchor, grid, confidence, tolerance, minUnits, other, kinds, levelShifts);
  }

  /** The same translation with other transfers. */
  public Translation withKinds(List<TransferFunction> other) {
    return new Translation(
        origin, anchor, grid, confidence, tolerance, minUnits, handling, other, levelShifts);
  }

  /** The same translation with other level shifts. */
  public Translation withLevelShifts(List<LevelShift> other) {
    return new Translation(
        origin, anchor, grid, confidence, tolerance, minUnits, handling, kinds, other);
  }

  /** The kinds with fewer units than the study asks for: nothing they translate is reliable. */
  public List<TransferFunction> kindsWithTooFewUnits() {
    return kinds.stream().filter(k -> k.units() < minUnits).toList();
  }

  /** The transfer function of a kind. */
  public Optional<TransferFunction> kind(String kind) {
    return kinds.stream().filter(k -> k.kind().equals(kind)).findFirst();
  }

  /** By how much a kind reads louder on the new fixture; nothing where it is not known. */
  public Optional<LevelShift> levelShift(String kind) {
    return levelShifts.stream().filter(s -> s.kind().equals(kind)).findFirst();
  }

  /** The kinds a graph of unknown kind is held to be one of: passive ones with enough units. */
  public List<TransferFunction> candidatesForUnknown() {
    return kinds.stream().filter(k -> k.units() >= minUnits && Unit.passive(k.kind())).toList();
  }
}
