package org.twinrig.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SatterthwaiteTest {
  private static double freedom(double[] variances, double[] degreesOfFreedom) {
    return VarianceEstimate.freedom(
        IntStream.range(0, variances.length)
            .mapToObj(k -> new VarianceEstimate(variances[k], degreesOfFreedom[k]))
            .toList());
  }

  /**
   * JCGM 100:2008, G.4.1, NOTE 1's example: inputs 0.25, 0.57 and 0.82 % from 10, 5 and 15 values.
   */
  @Test
  void theGuidesExampleIsReproduced() {
    double[] variances = {0.25 * 0.25, 0.57 * 0.57, 0.82 * 0.82};
    assertEquals(19.0, freedom(variances, new double[] {9, 4, 14}), 0.05);
  }

  @Test
  void whatIsKnownExactlyDoesNotCount() {
    assertEquals(4 * 7.0, freedom(new double[] {1, 1}, new double[] {7, Double.POSITIVE_INFINITY}));
    assertEquals(7, freedom(new double[] {3, 0}, new double[] {7, 2}));
  }

  @Test
  void nothingAtAllHasNoDegreesOfFreedom() {
    assertThrows(
        IllegalArgumentException.class, () -> freedom(new double[] {0, 0}, new double[] {1, 2}));
  }
}
