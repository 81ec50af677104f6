package org.twinrig.evidence;

import java.util.Objects;
import org.twinrig.internal.Checks;
import org.twinrig.study.DbLimit;

/**
 * What a plan has to meet, and what a lab can spend on it. The half-width to be reached; the mean
 * difference a study should be able to show, dB, above 0; the fewest units a kind needs before any
 * of its bands is reliable, and the most that can be captured; the most seatings of a unit on
 * either fixture, {@link #FEWEST_SEATINGS} or more.
 */
public record PlanLimits(
    DbLimit tolerance, double differenceDb, int unitsMin, int unitsMax, int seatingsMax) {
  /** With a single seating its scatter would not be known any more. */
  public static final int FEWEST_SEATINGS = 2;

  public PlanLimits {
    Objects.requireNonNull(tolerance, "tolerance");
    Checks.positive(differenceDb, "a mean difference in dB");
    if (unitsMin < 1 || unitsMax < unitsMin || seatingsMax < FEWEST_SEATINGS) {
      throw new IllegalArgumentException(
          "a plan needs 1 or more units, no fewer than asked for, and 2 or more seatings, but has "
              + "%s to %s and at most %s".formatted(unitsMin, unitsMax, seatingsMax));
    }
  }
}
