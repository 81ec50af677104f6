package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two small groups, all of whose sign patterns can be written out. */
class SignFlipDifferenceTest {
  private static final double NONE = Double.NaN;

  private static final double[][] FIRST = {
    {0.3, 1.1, 5, 2}, {-1.4, 0.2, 5, NONE}, {2.2, -0.7, 5, NONE}
  };
  private static final double[][] SECOND = {
    {0.1, NONE, 5, 1}, {1.9, 2.3, 5, 3}, {-0.8, 0.4, 5, -4}
  };

  /**
   * Of 64 patterns each comes with its negative, so that the statistic has 32 values of one weight.
   * 4999 draws find a quantile in the middle of one of them: its distance from the next is 2.2
   * standard errors of a drawn share, or more.
   */
  @ParameterizedTest
  @ValueSource(ints = {2, 9, 17, 23, 27, 29, 30})
  void isTheQuantileOfAllPatterns(int rank) {
    double[] all = new double[64];
    Arrays.setAll(all, code -> greatest(code));
    Arrays.sort(all);
    double confidence = (2 * rank + 1) / 64.0;
    double q = new SignFlipInterval(confidence, 1).ofDifference(FIRST, SECOND);
    assertEquals(all[2 * rank], q, 1e-9);
    assertEquals(q, new SignFlipInterval(confidence, 1).ofDifference(SECOND, FIRST), 1e-9);
    assertEquals(q, new SignFlipInterval(confidence, 7).ofDifference(FIRST, SECOND), 1e-9);
  }

  /** Only the first two bands count: the third has no scatter, the fourth one unit of a group. */
  private static double greatest(int code) {
    double greatest = 0;
    for (int b = 0; b < 2; b++) {
      double[] one = flipped(FIRST, b, code);
      double[] two = flipped(SECOND, b, code >> 3);
      greatest = Math.max(greatest, Math.abs(one[0] - two[0]) / Math.sqrt(one[1] + two[1]));
    }
    return greatest;
  }

  /** Mean of a flipped group and the square of its standard error. */
  private static double[] flipped(double[][] group, int b, int code) {
    double sum = 0;
    int n = 0;
    for (double[] unit : group) {
      sum += Double.isNaN(unit[b]) ? 0 : unit[b];
      n += Double.isNaN(unit[b]) ? 0 : 1;
    }
    double m = 0;
    double squares = 0;
    for (int i = 0; i < group.length; i++) {
      if (!Double.isNaN(group[i][b])) {
        double residual = (group[i][b] - sum / n) * ((code >> i & 1) == 0 ? 1 : -1);
        m += residual / n;
        squares += residual * residual / n;
      }
    }
    return new double[] {m, (squares - m * m) / (n - 1)};
  }

  @Test
  void withoutScatterThereIsNoMultiplier() {
    double[][] still = {{1, NONE}, {1, 2}, {1, NONE}};
    assertEquals(0, new SignFlipInterval(0.95, 1).ofDifference(still, still));
  }

  /** With two units in either group residuals line up in half of the patterns. */
  @Test
  void residualsThatLineUpGiveNoBound() {
    double[][] one = {{0}, {1}};
    double[][] two = {{0}, {3}};
    assertEquals(Double.POSITIVE_INFINITY, new SignFlipInterval(0.9, 1).ofDifference(one, two));
  }

  @Test
  void eachGroupNeedsTwoUnits() {
    SignFlipInterval procedure = new SignFlipInterval(0.95, 1);
    double[][] one = {{1, 2, 3, 4}};
    assertThrows(IllegalArgumentException.class, () -> procedure.ofDifference(one, SECOND));
    assertThrows(IllegalArgumentException.class, () -> procedure.ofDifference(FIRST, one));
    assertThrows(IllegalArgumentException.class, () -> new SignFlipInterval(1, 1));
  }
}
