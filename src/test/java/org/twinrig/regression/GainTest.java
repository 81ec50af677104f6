package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GainTest {
  /** Mean and standard error of the mean, worked out by hand. */
  @ParameterizedTest
  @CsvSource({
    "'1 2 3', 3, true", // 2 against 0.577
    "'0 1 2', 3, true", // 1 against 0.577
    "'-1 2', 2, false", // 0.5 against 1.5
    "'0 2', 2, false", // 1 against 1: not beyond
    "'-0.01 1.99', 2, false",
    "'0.01 2.01', 2, true", // 1.01 against 1
    "'-1 -2 -3', 3, false",
    "'1 2 3 -90', 3, true" // only the first three count
  })
  void aGainMustLieBeyondOneStandardError(String gains, int n, boolean beyond) {
    double[] values =
        java.util.Arrays.stream(gains.split(" ")).mapToDouble(Double::parseDouble).toArray();
    assertEquals(beyond, Gain.beyondOneStandardError(values, n));
  }
}
