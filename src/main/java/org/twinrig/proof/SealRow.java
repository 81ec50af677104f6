package org.twinrig.proof;

import java.util.OptionalDouble;

/**
 * How well lost seals of one kind are found at one limit.
 *
 * @param kind the kind
 * @param limitFactor times the limit in force; 1 is the limit in force
 * @param lost lost seals that cost at least 3 dB below 100 Hz and stand more than three standard
 *     deviations of good seatings out
 * @param found how many of them are reported
 * @param slight lost seals that cost less, or stand out less
 * @param slightFound how many of them are reported
 * @param sound captures whose seal held
 * @param accused how many of them are reported
 * @param effect what leaving out does to the mean transfer, at the limit in force
 */
public record SealRow(
    String kind,
    double limitFactor,
    int lost,
    int found,
    int slight,
    int slightFound,
    int sound,
    int accused,
    Effect effect) {

  /**
   * RMS error of the mean transfer below 200 Hz against the truth of the study's own units.
   *
   * @param suggestDb with every capture, dB; nothing at other limits than the one in force
   * @param excludeDb with captures left out by the rules, dB
   * @param soundDb with every seal good, dB: what no screening can undercut
   */
  public record Effect(OptionalDouble suggestDb, OptionalDouble excludeDb, OptionalDouble soundDb) {
    static final Effect NONE =
        new Effect(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * The share of lost seals that are found.
   *
   * @return 0 to 1; nothing when none was lost
   */
  public OptionalDouble sensitivity() {
    return lost == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) found / lost);
  }

  /**
   * The share of sound captures that are accused.
   *
   * @return 0 to 1
   */
  public double falseAlarms() {
    return (double) accused / sound;
  }
}
