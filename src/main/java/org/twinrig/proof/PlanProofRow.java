package org.twinrig.proof;

import org.twinrig.evidence.Plan;

/**
 * How plans of one kind fared.
 *
 * @param kind the kind, or {@link #ALL_KINDS}
 * @param claim what the plans said of the zones
 * @param studies in how many small studies a plan said so of any zone
 * @param zones of how many zones it was said, all studies together
 * @param withinSlack share of them that came to no more than the tolerance and {@link Plan#SLACK}
 *     of it
 * @param withinTolerance share that came to no more than the tolerance
 * @param ratio mean of the half-width reached over the tolerance
 * @param meanUnits mean number of units of the designs
 * @param meanSeatings mean number of seatings of the designs, in all
 */
public record PlanProofRow(
    String kind,
    Claim claim,
    int studies,
    long zones,
    Figure withinSlack,
    Figure withinTolerance,
    Figure ratio,
    double meanUnits,
    double meanSeatings) {
  /** Stands for every kind. */
  public static final String ALL_KINDS = "all kinds";

  /** What a plan says of a zone. */
  public enum Claim {
    /** A study of the planned size meets the tolerance at the limits of the variances. */
    PROMISED("promised"),
    /** The same of a zone that the small study itself does not meet. */
    NEWLY_PROMISED("newly promised"),
    /** A study of the size that the variances ask for as they stand is expected to meet it. */
    EVEN_CHANCE("even chance");

    private final String word;

    Claim(String word) {
      this.word = word;
    }

    /**
     * The claim as files write it.
     *
     * @return for example {@code promised}
     */
    public String word() {
      return word;
    }
  }

  /**
   * Whether the promise of a plan is kept.
   *
   * @return true when at least {@link Plan#CHANCE} of the promised zones came within the slack; for
   *     other claims always
   */
  public boolean kept() {
    return claim != Claim.PROMISED || withinSlack.value() >= Plan.CHANCE;
  }
}
