package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.study.BandSample;

/** Against the formula solved with scipy 1.17.1, R 4.2.2, and smooth normal processes. */
class PeakBoundTest {
  /**
   * scipy: {@code brentq(lambda u: 2*(t.sf(u,nu) + L/(2*pi)*(1+u*u/nu)**(-(nu-1)/2)) - p, .1, 1e4)}
   * and {@code t.isf(p/2/bands, nu)}, the smaller of the two.
   */
  @ParameterizedTest
  @CsvSource({
    "20, 120, 10, 0.0008333333333333334, 7.948208142903809",
    "0, 120, 10, 0.05, 2.228138851986274",
    "25, 120, 6, 0.00125, 13.46077684732878",
    "5, 120, 28, 0.0016666666666666668, 4.348160515902977",
    "57, 120, 10, 0.004166666666666667, 7.0563234080215045"
  })
  void theBoundIsThatOfTheFormula(double length, int bands, int nu, double p, double expected) {
    assertEquals(expected, new PeakBound(length, bands, nu).at(p), 1e-7);
  }

  /** R: {@code d <- c(1.2,0.8,1.5,1.1,0.9,1.3,1.0,4.2,1.05); rstudent(lm(d~1))}. */
  @Test
  void residualsAreThoseOfR() {
    double[] d = {1.2, 0.8, 1.5, 1.1, 0.9, 1.3, 1.0, 4.2, 1.05};
    double[] expected = {
      -0.236634777793,
      -0.629934214448,
      0.047146272966,
      -0.332568120755,
      -0.528781360743,
      -0.141618811105,
      -0.429810838103,
      13.003821702945,
      -0.381000381001
    };
    StudentisedResiduals residuals = StudentisedResiduals.of(0, sample(d), d.length);
    for (int i = 0; i < d.length; i++) {
      assertEquals(expected[i], residuals.t()[i], 1e-10);
    }
    // 4.2 minus the mean of the other eight.
    assertEquals(3.09375, residuals.departuresDb()[7], 1e-12);
  }

  @Test
  void unitsThatAgreeToTheLastDigitAreJudgedByTheResolution() {
    double[] d = {1, 1, 1, 1, 1, 1, 1, 3};
    StudentisedResiduals residuals = StudentisedResiduals.of(0, sample(d), d.length);
    assertEquals(2 / (0.01 * Math.sqrt(8 / 7.0)), residuals.t()[7], 1e-9);
    double[] same = {1, 1, 1, 1};
    assertEquals(0, StudentisedResiduals.of(0, sample(same), 4).t()[2]);
  }

  /** Smooth normal differences of like units exceed the 5 % bound in about 5 % of the studies. */
  @ParameterizedTest
  @CsvSource({"8, 3", "12, 10", "12, 25", "30, 10"})
  void likeUnitsExceedTheBoundAsOftenAsTheLevelSays(int units, int widthBands) {
    Random random = new Random(17);
    int studies = 500;
    int exceeded = 0;
    for (int s = 0; s < studies; s++) {
      exceeded += exceeds(smooth(random, units, widthBands), units) ? 1 : 0;
    }
    double share = exceeded / (double) studies;
    // The Monte Carlo standard error is 0.010.
    assertTrue(share > 0.02 && share < 0.08, "exceeded in " + share);
  }

  private static boolean exceeds(double[][] differences, int units) {
    List<StudentisedResiduals> bands = new ArrayList<>();
    for (int b = 0; b < differences.length; b++) {
      bands.add(StudentisedResiduals.of(b, sample(differences[b]), units));
    }
    double bound =
        PeakBound.of(bands.stream().map(StudentisedResiduals::direction).toList(), units - 2)
            .at(0.05 / units);
    return bands.stream()
        .anyMatch(r -> IntStream.range(0, units).anyMatch(i -> Math.abs(r.t()[i]) > bound));
  }

  /** By band and unit: white noise under a Gaussian window. */
  private static double[][] smooth(Random random, int units, int width) {
    int bands = 120;
    double[][] smooth = new double[bands][units];
    int reach = 2 * width;
    double[] weights = new double[2 * reach + 1];
    for (int k = 0; k < weights.length; k++) {
      weights[k] = Math.exp(-Math.pow((k - reach) / (double) width, 2));
    }
    for (int i = 0; i < units; i++) {
      double[] white = random.doubles(bands + 2L * reach).map(x -> random.nextGaussian()).toArray();
      for (int b = 0; b < bands; b++) {
        for (int k = 0; k < weights.length; k++) {
          smooth[b][i] += weights[k] * white[b + k];
        }
      }
    }
    return smooth;
  }

  private static BandSample sample(double[] differences) {
    BandSample.Seatings none = new BandSample.Seatings(OptionalDouble.empty(), 0, 1);
    return new BandSample(
        IntStream.range(0, differences.length).toArray(),
        differences,
        new double[differences.length],
        none,
        none);
  }
}
