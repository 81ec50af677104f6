package org.twinrig.study;

import java.util.OptionalDouble;

/**
 * What a kind's units say about one band. Handed from {@link PairedUnits#at} straight to a kernel,
 * which is why it carries arrays; they are not shared with anything else.
 *
 * @param members positions of the units, rising
 * @param differencesDb level on the new fixture minus level on the old one, {@code d_i(b)}
 * @param variances sampling variance of each difference from seating scatter, {@code v_i(b)}, dB²;
 *     0 where the scatter is undefined
 */
@SuppressWarnings("ArrayRecordComponent")
public record BandSample(
    int[] members, double[] differencesDb, double[] variances, Seatings from, Seatings to) {

  /**
   * Seatings of a band on one fixture.
   *
   * @param variance pooled variance between seatings {@code s2_g(b)}, dB²; nothing when no unit was
   *     seated twice
   * @param degreesOfFreedom of that variance, {@code Σ (n_ig - 1)}; 0 when no unit was seated twice
   * @param harmonicMean harmonic mean of the units' numbers of seatings, {@code ñ_g}; 0 with no
   *     unit
   */
  public record Seatings(OptionalDouble variance, int degreesOfFreedom, double harmonicMean) {}

  /** How many units: {@code n}. */
  public int size() {
    return members.length;
  }
}
