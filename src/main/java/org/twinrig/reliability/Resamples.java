package org.twinrig.reliability;

import java.util.SplittableRandom;

/**
 * How often each unit counts in each resample.
 *
 * <p>One row per resample, one column per unit.
 */
@SuppressWarnings("ArrayRecordComponent") // handed from the draw straight to the kernel
record Resamples(double[][] counts) {

  /** Draws resamples of {@code n-1} out of {@code n} units with replacement. */
  static Resamples drawn(int units, int resamples, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] counts = new double[resamples][units];
    int draws = Math.max(1, units - 1);
    for (double[] resample : counts) {
      for (int k = 0; k < draws; k++) {
        resample[random.nextInt(units)]++;
      }
    }
    return new Resamples(counts);
  }

  int size() {
    return counts.length;
  }
}
