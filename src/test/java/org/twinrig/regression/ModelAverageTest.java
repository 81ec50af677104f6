package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.twinrig.ReferenceTable;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/**
 * Weighted windows, the errors of nested leaving out, moderated variances and half-widths against
 * numpy and scipy; the script stands beside the tables.
 */
class ModelAverageTest {
  private static final int BANDS = 11;

  @TestFactory
  Stream<DynamicTest> predictionsAndTheirErrorsAreThoseOfNumpy() {
    List<Map<String, String>> units = ReferenceTable.rows("model_average_units.csv");
    PairedUnits paired = KindOfNumbers.of(columns(units, "x"), columns(units, "d"), 12);
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.AVERAGE, 2).fit(paired);
    return ReferenceTable.rows("model_average.csv").stream()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    "band " + row.get("band"), () -> agrees(paired, estimate, row)));
  }

  private static void agrees(PairedUnits paired, KindEstimate estimate, Map<String, String> row) {
    int b = Integer.parseInt(row.get("band")) - 1;
    BandOutcome.Fitted fitted = (BandOutcome.Fitted) estimate.bands().get(b);
    BandOutcome.Prediction p = fitted.prediction();
    double[] errors =
        Arrays.stream(row.get("errors").split(";")).mapToDouble(Double::valueOf).toArray();
    for (int i = 0; i < errors.length; i++) {
      assertEquals(errors[i], estimate.errors().get(i).db(b), 1e-9);
    }
    assertEquals(number(row, "offset_weight"), p.offsetWeight(), 1e-9);
    assertEquals(number(row, "loo_rms"), p.errors().looRmsDb(), 1e-9);
    assertEquals(number(row, "variance"), p.errors().varianceDb2(), 1e-9);
    assertEquals(number(row, "degrees_of_freedom"), p.errors().degreesOfFreedom(), 1e-9);
    assertEquals(number(row, "half"), p.halfDb(), 1e-9);
    double whole = StudentT.twoSided(1 - 0.05 / BANDS, fitted.units() - 1);
    assertEquals(number(row, "whole_half"), whole * Math.sqrt(p.errors().wholeVarianceDb2()), 1e-9);
    assertEquals(
        number(row, "shift"), p.window().orElseThrow().shiftDb(paired.from().means().get(0)), 1e-9);
  }

  private static double number(Map<String, String> row, String name) {
    return Double.parseDouble(row.get(name));
  }

  private static double[][] columns(List<Map<String, String>> units, String name) {
    double[][] values = new double[units.size()][BANDS];
    for (int i = 0; i < values.length; i++) {
      for (int b = 0; b < BANDS; b++) {
        values[i][b] = number(units.get(i), name + (b + 1));
      }
    }
    return values;
  }
}
