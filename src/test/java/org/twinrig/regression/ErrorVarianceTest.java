package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What neighbouring bands lend to a variance of errors; the whole of it is in ModelAverageTest. */
class ErrorVarianceTest {

  /** scipy 1.17.1: {@code scipy.special.polygamma(1, y)}. */
  @ParameterizedTest
  @CsvSource({
    "101.43329915079276, 0.1",
    "1.6449340668482264, 1",
    "0.2838229557371153, 4",
    "0.020201333226697126, 50"
  })
  void trigammaIsInverted(double x, double y) {
    assertEquals(y, ErrorVariance.inverseTrigamma(x), 1e-9 * y);
  }

  private static void assertIs(ErrorVariance found, double[] variances, double freedom) {
    for (int b = 0; b < variances.length; b++) {
      assertEquals(variances[b], found.variance(b), 1e-12);
      assertEquals(freedom, found.degreesOfFreedom(b), 1e-12);
    }
  }

  /** Below five units a band keeps its own mean square, averaged over 1/6 octave, and n - 1. */
  @Test
  void fewUnitsLendNothing() {
    int[] units = {4, 4, 4, 4, 4, 4, 4};
    double[] squares = {1, 2, 3, 4, 5, 6, 7};
    ErrorVariance found = new ErrorVariance.Bands(units, 12).of(squares);
    assertIs(found, new double[] {2, 2.5, 3, 4, 5, 5.5, 6}, 3);
  }

  /** An octave band has no neighbour within half an octave. */
  @Test
  void octaveBandsStandAlone() {
    ErrorVariance found =
        new ErrorVariance.Bands(new int[] {9, 9, 9}, 1).of(new double[] {1, 4, 9});
    assertIs(found, new double[] {1, 4, 9}, 8);
  }

  /** A band without errors has no variance, and lends none. */
  @Test
  void bandsWithoutErrorsStayOut() {
    ErrorVariance found =
        new ErrorVariance.Bands(new int[] {3, 0, 3, 3}, 12).of(new double[] {1, 99, 2, 3});
    assertEquals(2, found.variance(0), 0.51);
    assertTrue(Double.isNaN(found.variance(1)));
    assertEquals(2, found.variance(2), 1e-12);
  }

  /** Whatever the scatter, at most four degrees of freedom are lent, and none is taken. */
  @Property(tries = 100)
  void neighboursLendNoMoreThanFourDegreesOfFreedom(
      @ForAll @IntRange(min = 5, max = 40) int units,
      @ForAll @IntRange(min = 1, max = 200) int bands,
      @ForAll @IntRange(min = 0, max = 5) int spread,
      @ForAll int seed) {
    Random random = new Random(seed);
    double[] squares = new double[bands];
    Arrays.setAll(squares, b -> Math.exp(spread * random.nextGaussian()));
    int[] all = new int[bands];
    Arrays.fill(all, units);
    ErrorVariance found = new ErrorVariance.Bands(all, 12).of(squares);
    for (int b = 0; b < bands; b++) {
      double freedom = found.degreesOfFreedom(b);
      assertTrue(freedom >= units - 1 && freedom <= units + 3, "freedom " + freedom);
      assertTrue(found.variance(b) > 0 && Double.isFinite(found.variance(b)));
    }
  }

  /** Errors of exactly zero stay finite: the lab is told by another reason. */
  @Test
  void noScatterIsNoFault() {
    int[] units = new int[12];
    Arrays.fill(units, 8);
    ErrorVariance found = new ErrorVariance.Bands(units, 12).of(new double[12]);
    for (int b = 0; b < 12; b++) {
      double variance = found.variance(b);
      assertTrue(variance >= 0 && variance < 1e-6, "variance " + variance);
    }
  }
}
