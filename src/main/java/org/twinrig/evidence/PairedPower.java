package org.twinrig.evidence;

import java.util.OptionalInt;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.twinrig.internal.Checks;
import org.twinrig.regression.StudentT;

/**
 * How likely a paired t test shows a mean difference that is there.
 *
 * <p>{@code n} units whose differences scatter with standard deviation {@code σ} about {@code δ};
 * the test is two-sided at level {@code α}. The power is {@code P(T > t_{n-1,1-α/2})} with {@code
 * T} noncentral t on {@code n-1} degrees of freedom and noncentrality {@code √n·δ/σ}; the
 * negligible chance of a wrong sign is not counted. It is found as {@code E Φ(√n·δ/σ - t·S)} with
 * {@code S² = χ²_{n-1}/(n-1)}, by Simpson's rule over the density of {@code S}.
 *
 * <p>Source: Johnson, Kotz and Balakrishnan 1995, Continuous Univariate Distributions, vol. 2,
 * chapter 31 (from memory); checked against R, power.t.test.
 */
final class PairedPower {
  /** Even. */
  private static final int STEPS = 2000;

  /** How many of its standard deviations, about {@code 1/√(2ν)}, the density of S is followed. */
  private static final double REACH = 12;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Fewer units have no estimate. */
  private static final int FEWEST = 3;

  private PairedPower() {}

  /**
   * The power of {@code n} units, 2 or more, to show {@code δ} above 0 dB where {@code σ} is 0 dB
   * or more.
   */
  static double of(int units, double differenceDb, double deviationDb, double confidence) {
    Checks.positive(differenceDb, "a difference in dB");
    Checks.notNegative(deviationDb, "a standard deviation in dB");
    if (deviationDb == 0) {
      return 1;
    }
    double shift = Math.sqrt(units) * differenceDb / deviationDb;
    double t = StudentT.twoSided(confidence, units - 1);
    int freedom = units - 1;
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, freedom);
    double to = 1 + REACH / Math.sqrt(2.0 * freedom);
    double from = Math.max(0, 2 - to);
    double step = (to - from) / STEPS;
    double sum = 0;
    for (int k = 0; k <= STEPS; k++) {
      double s = from + k * step;
      double weight = k == 0 || k == STEPS ? 1 : k % 2 == 0 ? 2 : 4;
      // On one degree of freedom S is half normal: the density of χ² has a pole where S has none.
      double density =
          freedom == 1 ? 2 * NORMAL.density(s) : 2 * freedom * s * chi.density(freedom * s * s);
      sum += weight * density * NORMAL.cumulativeProbability(shift - t * s);
    }
    return Math.min(1, sum * step / 3);
  }

  /**
   * The fewest units with a power, 3 or more; nothing where the most to be tried do not reach it.
   */
  static OptionalInt units(
      double differenceDb, double deviationDb, double confidence, double power, int most) {
    if (most < FEWEST || of(most, differenceDb, deviationDb, confidence) < power) {
      return OptionalInt.empty();
    }
    int low = FEWEST - 1;
    int high = most;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (of(middle, differenceDb, deviationDb, confidence) >= power) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return OptionalInt.of(high);
  }
}
