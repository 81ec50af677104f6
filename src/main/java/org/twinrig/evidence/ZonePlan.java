package org.twinrig.evidence;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What it takes to bring one zone of a kind, an octave of the frequency axis, to its tolerance.
 *
 * <p>Half-widths of a zone are root mean squares over its bands.
 */
public final class ZonePlan {
  private final double fromHz;
  private final double toHz;
  private final double toleranceDb;
  private final boolean enoughUnits;
  private final ZoneVariance variance;
  private final Optional<Design> evenChance;
  private final Optional<Design> cautious;

  /** What can be done about a zone. */
  public enum Outlook {
    /** The study meets the tolerance as it is, with as many units as it asks for. */
    MET,
    /** A design within the limits meets it, with the chance of {@link Plan#CHANCE}. */
    PLANNED,
    /**
     * A design within the limits is expected to meet it, but none has the chance: the study knows
     * the variances too badly.
     */
    EVEN_CHANCE,
    /** It could be met, but with more than the limits allow. */
    BEYOND_LIMITS,
    /** What units and seatings cannot cut exceeds the tolerance by itself. */
    NEVER
  }

  ZonePlan(
      Part part, ZoneVariance variance, Optional<Design> evenChance, Optional<Design> cautious) {
    this.fromHz = part.fromHz;
    this.toHz = part.toHz;
    this.toleranceDb = part.toleranceDb;
    this.enoughUnits = part.enoughUnits;
    this.variance = variance;
    this.evenChance = Objects.requireNonNull(evenChance, "evenChance");
    this.cautious = Objects.requireNonNull(cautious, "cautious");
  }

  /**
   * An octave, or the part of one in which the tolerance is one number.
   *
   * @param enoughUnits whether the study has as many units as it asks for
   */
  record Part(double fromHz, double toHz, double toleranceDb, boolean enoughUnits) {}

  /** Lower edge of its first band. */
  public double fromHz() {
    return fromHz;
  }

  /** Upper edge of its last band. */
  public double toHz() {
    return toHz;
  }

  /** The half-width to be reached: dB. */
  public double toleranceDb() {
    return toleranceDb;
  }

  /** The half-width the study has: dB. */
  public double presentHalfDb() {
    return variance.presentHalfDb();
  }

  /** The half-width that no number of units and seatings goes below: dB. */
  public double neverBelowDb() {
    return variance.neverBelowDb();
  }

  /**
   * The half-width that a design is expected to have.
   *
   * @param design with more than one unit beyond what the rule spends
   * @return dB
   */
  public double halfDb(Design design) {
    return variance.halfDb(design);
  }

  /**
   * The half-width that a study of a design stays below with the chance of {@link Plan#CHANCE}.
   *
   * @param design the same
   * @return dB
   */
  public double upperHalfDb(Design design) {
    return variance.upperHalfDb(design);
  }

  /**
   * Whether a design is expected to meet the tolerance.
   *
   * @return true when its half-width is at most the tolerance
   */
  public boolean expects(Design design) {
    return halfDb(design) <= toleranceDb;
  }

  /**
   * Whether a design meets the tolerance with the chance of {@link Plan#CHANCE}.
   *
   * @return true when it is expected to, and stays within {@link Plan#SLACK} of it with that chance
   */
  public boolean meetsCautiously(Design design) {
    return expects(design) && upperHalfDb(design) <= toleranceDb * (1 + Plan.SLACK);
  }

  /**
   * The cheapest design that is expected to meet the tolerance; every other study misses it.
   *
   * @return nothing where the limits do not allow one
   */
  public Optional<Design> evenChance() {
    return evenChance;
  }

  /**
   * The cheapest design that meets the tolerance with the chance of {@link Plan#CHANCE}.
   *
   * @return nothing where the limits do not allow one
   */
  public Optional<Design> cautious() {
    return cautious;
  }

  /**
   * With how many units, seated as now, a paired t test at a band like the zone's shows a mean
   * difference between the fixtures with the chance of {@link Plan#CHANCE}, if it is there.
   *
   * @param differenceDb the difference, dB, above 0
   * @param most the most units to try
   * @return 3 or more; nothing where that many do not
   */
  public OptionalInt unitsToShow(double differenceDb, int most) {
    return PairedPower.units(
        differenceDb, variance.unitDeviationDb(), variance.confidence(), Plan.CHANCE, most);
  }

  int units() {
    return variance.units();
  }

  boolean seatingKnown(boolean old) {
    return variance.seatingKnown(old);
  }

  /** What can be done: the first that applies. */
  public Outlook outlook() {
    if (enoughUnits && presentHalfDb() <= toleranceDb) {
      return Outlook.MET;
    }
    if (neverBelowDb() > toleranceDb) {
      return Outlook.NEVER;
    }
    if (cautious.isPresent()) {
      return Outlook.PLANNED;
    }
    return evenChance.isPresent() ? Outlook.EVEN_CHANCE : Outlook.BEYOND_LIMITS;
  }
}
