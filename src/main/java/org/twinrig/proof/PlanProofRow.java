package org.twinrig.proof;

import org.twinrig.evidence.Plan;
import org.twinrig.evidence.ZonePlan;

/**
 * How plans of one kind fared.
 *
 * @param kind the kind, or {@link #ALL_KINDS}
 * @param assured whether the designs are {@linkplain ZonePlan#assured assured}, or have an
 *     {@linkplain ZonePlan#evenChance even chance}
 * @param studies in how many small studies such a design was found
 * @param zones how many zones were planned and tried
 * @param withinSlack share of them that came to no more than the tolerance and {@link Plan#SLACK}
 *     of it
 * @param withinTolerance share that came to no more than the tolerance
 * @param ratio mean of the half-width reached over the tolerance
 * @param meanUnits mean number of units of the designs
 * @param meanSeatings mean number of seatings of the designs, in all
 */
public record PlanProofRow(
    String kind,
    boolean assured,
    int studies,
    long zones,
    Figure withinSlack,
    Figure withinTolerance,
    Figure ratio,
    double meanUnits,
    double meanSeatings) {
  /** Stands for every kind. */
  public static final String ALL_KINDS = "all kinds";

  /**
   * Whether the promise of a plan is kept.
   *
   * @return true when at least {@link Plan#CHANCE} of the zones came within the slack, or when only
   *     an even chance was promised
   */
  public boolean kept() {
    return !assured || withinSlack.value() >= Plan.CHANCE;
  }
}
