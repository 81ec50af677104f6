package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.twinrig.ReferenceTable;

/**
 * The window ridge against {@code lm.ridge} of the R package MASS, refitted without each unit; the
 * script that made the numbers, and how its penalty is made ours, is window_ridge_mass.R beside
 * them.
 */
class RidgeLibraryTest {
  private static final int BANDS = 16;

  @TestFactory
  Stream<DynamicTest> coefficientsAndErrorsAreThoseOfLmRidge() {
    List<Map<String, String>> units = ReferenceTable.rows("window_ridge_mass_units.csv");
    double[][] x = levels(units, "x");
    double[][] d = levels(units, "d");
    return ReferenceTable.rows("window_ridge_mass.csv").stream()
        .map(row -> DynamicTest.dynamicTest(name(row), () -> agrees(x, d, row)));
  }

  private static void agrees(double[][] x, double[][] d, Map<String, String> row) {
    int units = whole(row, "units");
    WindowData data =
        WindowData.of(KindOfNumbers.of(Arrays.copyOf(x, units), Arrays.copyOf(d, units), 12));
    StackedWindow window =
        StackedWindow.of(
                data,
                whole(row, "band") - 1,
                new WindowShape(whole(row, "half_width"), whole(row, "borrow")))
            .orElseThrow();
    double kappa = Double.parseDouble(row.get("kappa"));
    double lambda = kappa * window.scale();
    assertEquals(Double.parseDouble(row.get("lambda")), lambda, 1e-11 * lambda);
    assertArrayEquals(
        numbers(row, "beta"), window.factor().ridge(window.differences(), lambda), 1e-12);
    assertArrayEquals(
        numbers(row, "loo_residuals"),
        WindowDeletion.withoutOne(new WindowDeletion(window).at(kappa), units),
        1e-12);
  }

  private static String name(Map<String, String> row) {
    return "%s units, band %s, h %s, J %s, kappa %s"
        .formatted(
            row.get("units"),
            row.get("band"),
            row.get("half_width"),
            row.get("borrow"),
            row.get("kappa"));
  }

  private static double[][] levels(List<Map<String, String>> units, String name) {
    double[][] values = new double[units.size()][BANDS];
    for (int i = 0; i < values.length; i++) {
      for (int b = 0; b < BANDS; b++) {
        values[i][b] = Double.parseDouble(units.get(i).get(name + (b + 1)));
      }
    }
    return values;
  }

  private static int whole(Map<String, String> row, String column) {
    return Integer.parseInt(row.get(column));
  }

  private static double[] numbers(Map<String, String> row, String column) {
    return Arrays.stream(row.get(column).split(";", -1)).mapToDouble(Double::parseDouble).toArray();
  }
}
