package org.twinrig.regression;

import org.twinrig.study.BandSample;

/**
 * One number per unit at one band, with what is known of its error. Handed straight to a kernel,
 * which is why it carries arrays; they are not shared with anything else.
 *
 * <p>Positions of the units that have one, rising; the numbers in dB; the sampling variance of each
 * from seating scatter, dB², 0 where it is unknown.
 */
@SuppressWarnings("ArrayRecordComponent")
public record UnitSample(int[] members, double[] valuesDb, double[] variances) {

  /** The units' differences between the fixtures. */
  static UnitSample of(BandSample sample) {
    return new UnitSample(sample.members(), sample.differencesDb(), sample.variances());
  }

  /** How many units: {@code n}. */
  public int size() {
    return members.length;
  }
}
