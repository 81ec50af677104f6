package org.twinrig.evidence;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * What it takes to bring one zone of a kind, an octave of the frequency axis, to its tolerance.
 *
 * <p>{@code evenChance} is the cheapest design that is expected to meet the tolerance, where the
 * limits allow one (every other study misses it), {@code cautious} the cheapest that meets it with
 * the chance of {@link Plan#CHANCE}.
 */
public record ZonePlan(
    double fromHz,
    double toHz,
    double toleranceDb,
    boolean enoughUnits,
    ZoneVariance variance,
    Optional<Design> evenChance,
    Optional<Design> cautious) {

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

  /** Whether a design is expected to meet the tolerance. */
  public boolean expects(Design design) {
    return variance.halfDb(design) <= toleranceDb;
  }

  /** Whether it is, and stays within {@link Plan#SLACK} of it with {@link Plan#CHANCE}. */
  public boolean meetsCautiously(Design design) {
    return expects(design) && variance.upperHalfDb(design) <= toleranceDb * (1 + Plan.SLACK);
  }

  /**
   * With how many units, seated as now, a paired t test at a band like the zone's shows a mean
   * difference between the fixtures with the chance of {@link Plan#CHANCE}, if it is there: 3 or
   * more; nothing where the most to be tried do not.
   */
  public OptionalInt unitsToShow(double differenceDb, int most) {
    return PairedPower.units(
        differenceDb, variance.unitDeviationDb(), variance.confidence(), Plan.CHANCE, most);
  }

  ZonePlan with(Optional<Design> even, Optional<Design> sure) {
    return new ZonePlan(fromHz, toHz, toleranceDb, enoughUnits, variance, even, sure);
  }

  /** What can be done: the first that applies. */
  public Outlook outlook() {
    if (enoughUnits && variance.presentHalfDb() <= toleranceDb) {
      return Outlook.MET;
    }
    if (variance.neverBelowDb() > toleranceDb) {
      return Outlook.NEVER;
    }
    if (cautious.isPresent()) {
      return Outlook.PLANNED;
    }
    return evenChance.isPresent() ? Outlook.EVEN_CHANCE : Outlook.BEYOND_LIMITS;
  }
}
