package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.study.PredictionModel;

/** The offset's errors and criteria against leaving units out one by one. */
class BandErrorsTest {
  private static final int UNITS = 9;

  /** Differences about a mean far from 0; the fourth unit has no level at the second band. */
  private static double[] differences(double meanDb) {
    Random random = new Random(8);
    return random.doubles(UNITS, meanDb - 2, meanDb + 2).toArray();
  }

  private static BandErrors errors(double[] d) {
    double[][] x = new double[UNITS][2];
    double[][] both = new double[UNITS][2];
    for (int i = 0; i < UNITS; i++) {
      x[i][1] = i == 3 ? Double.NaN : 0;
      Arrays.fill(both[i], d[i]);
    }
    return BandErrors.of(WindowData.of(KindOfNumbers.of(x, both, 12)), 1, List.of());
  }

  /** What the mean of the others, {@code without} among neither, misses a unit by. */
  private static double error(double[] d, int unit, int without) {
    return d[unit]
        - IntStream.range(0, UNITS)
            .filter(j -> j != unit && j != without && j != 3)
            .mapToDouble(j -> d[j])
            .average()
            .orElseThrow();
  }

  private static double logMeanSquare(double[] d, int without) {
    return Math.log(
        IntStream.range(0, UNITS)
            .filter(j -> j != without && j != 3)
            .mapToDouble(j -> Math.pow(error(d, j, without), 2))
            .average()
            .orElseThrow());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 12, -30})
  void theOffsetIsJudgedOnUnitsThatDidNotEnter(double meanDb) {
    double[] d = differences(meanDb);
    BandErrors errors = errors(d);
    BandErrors.Rule offset = errors.offset();
    assertEquals(8, errors.members());
    assertEquals(logMeanSquare(d, -1), offset.logMse(), 1e-9);
    for (int i = 0; i < UNITS; i++) {
      if (i == 3) {
        assertTrue(Double.isNaN(offset.errors()[i]), "no difference, no error");
        assertEquals(offset.logMse(), offset.logMseWithout()[i], "leaving it out changes nothing");
      } else {
        assertEquals(error(d, i, -1), offset.errors()[i], 1e-9);
        assertEquals(logMeanSquare(d, i), offset.logMseWithout()[i], 1e-9);
      }
    }
  }

  /** Mean squares below 1e-6 dB² count as that. */
  @Test
  void equalUnitsHaveTheLeastMeanSquare() {
    double[] d = new double[UNITS];
    Arrays.fill(d, 5);
    BandErrors.Rule offset = errors(d).offset();
    assertEquals(Math.log(1e-6), offset.logMse(), 1e-12);
    assertEquals(Math.log(1e-6), offset.logMseWithout()[0], 1e-12);
  }

  /** A difference common to all units changes no choice: it is the mean's. */
  @Test
  void theChoiceDoesNotDependOnTheMeanDifference() {
    Random random = new Random(44);
    double[][] x = new double[10][5];
    double[][] d = new double[10][5];
    double[][] shifted = new double[10][5];
    for (int i = 0; i < 10; i++) {
      for (int b = 0; b < 5; b++) {
        x[i][b] = random.nextGaussian();
        d[i][b] = 0.7 * x[i][b] + 0.7 * random.nextGaussian();
        shifted[i][b] = d[i][b] + 25;
      }
    }
    KindEstimate plain =
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(KindOfNumbers.of(x, d, 12));
    KindEstimate moved =
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 1)
            .fit(KindOfNumbers.of(x, shifted, 12));
    for (int b = 0; b < 5; b++) {
      BandOutcome.Fitted one = (BandOutcome.Fitted) plain.bands().get(b);
      BandOutcome.Fitted two = (BandOutcome.Fitted) moved.bands().get(b);
      assertEquals(one.prediction().model(), two.prediction().model());
      assertEquals(one.prediction().halfDb(), two.prediction().halfDb(), 1e-9);
      assertEquals(one.mean().meanDb() + 25, two.mean().meanDb(), 1e-9);
    }
  }
}
