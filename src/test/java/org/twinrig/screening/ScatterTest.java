package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against numpy 2.x and the normal distribution of scipy 1.17.1. */
class ScatterTest {
  @Test
  void quantilesAreThoseOfNumpy() {
    double[] values = {3.1, 0.2, 1.7, 9.4, 2.2, 2.9, 0.4, 5.5};
    // numpy.quantile(x, [.25, .5, .75, .9])
    assertEquals(1.375, Scatter.quantile(values, 0.25), 1e-12);
    assertEquals(2.55, Scatter.median(values), 1e-12);
    assertEquals(3.7, Scatter.quantile(values, 0.75), 1e-12);
    assertEquals(6.67, Scatter.quantile(values, 0.9), 1e-12);
    assertEquals(3.7 + 4 * (3.7 - 1.375), Scatter.upperFence(values, 4), 1e-12);
    assertEquals(7, Scatter.quantile(new double[] {7}, 0.75));
  }

  @Test
  void pairsOfNormalNumbersGiveTheirStandardDeviation() {
    Random random = new Random(3);
    double[] differences = new double[200_000];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = 1.7 * pair(random);
    }
    assertEquals(1.7, Scatter.ofPairs(differences), 0.02);
  }

  /** With seven of ten pairs wild the scatter stays of the order of the good ones'. */
  @Test
  void wildPairsHardlyMatter() {
    Random random = new Random(4);
    double[] differences = new double[100_000];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = pair(random) + (i % 10 < 7 ? 20 : 0);
    }
    // The first quartile of all is the 5/6 quantile of the good: 2.2191·√2·1.3830.
    assertEquals(4.34, Scatter.ofPairs(differences), 0.05);
  }

  private static double pair(Random random) {
    double one = random.nextGaussian();
    return Math.abs(one - random.nextGaussian());
  }
}
