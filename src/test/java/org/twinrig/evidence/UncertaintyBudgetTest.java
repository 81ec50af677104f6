package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.regression.StudentT;

/** Worked examples of JCGM 100:2008 (the Guide). */
class UncertaintyBudgetTest {

  /** H.1, calibration of an end gauge; unrounded values as stated in the reference table. */
  @Test
  void theEndGaugeOfTheGuide() {
    UncertaintyBudget budget = endGauge();
    double[] published = {25, 9.7, 0, 0, 2.9, 16.7};
    for (int i = 0; i < published.length; i++) {
      assertEquals(published[i], Math.sqrt(budget.contributions().get(i).variance()), 0.05);
    }
    assertEquals(32, budget.combined(), 0.5);
    assertEquals(31.71060964, budget.combined(), 1e-8);
    assertEquals(16.65606270, budget.effectiveDegreesOfFreedom(), 1e-8);
    assertEquals(92.13984804, budget.expanded(), 1e-6);
    // The Guide rounds u_c to 32 nm, cuts ν to 16 and prints k = 2.92 and U = 93 nm.
    double k = StudentT.twoSided(0.99, 16);
    assertEquals(16, Math.floor(budget.effectiveDegreesOfFreedom()));
    assertEquals(2.92078162, k, 1e-8);
    assertEquals(93.46501, k * 32, 1e-5);
  }

  static UncertaintyBudget endGauge() {
    List<Map<String, String>> rows = ReferenceTable.rows("gum_h1_end_gauge_budget.csv");
    double ls = value(rows, "ls");
    double theta = value(rows, "theta");
    double alpha = value(rows, "alphas");
    // l = ls + d - ls·(δα·θ + α·δθ), H.1.2; derivatives by hand.
    double[] sensitivities = {1, 1, -ls * value(rows, "dtheta"), -ls * 0, -ls * theta, -ls * alpha};
    List<VarianceEstimate> contributions = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      Map<String, String> row = rows.get(i);
      String dof = row.get("dof");
      contributions.add(
          typeA(
              sensitivities[i] * Double.parseDouble(row.get("standard_uncertainty")),
              dof.isEmpty() ? Double.POSITIVE_INFINITY : Double.parseDouble(dof)));
    }
    return new UncertaintyBudget(contributions, 0.99);
  }

  /** An input of type A with {@code c·u(x)}. */
  static VarianceEstimate typeA(double uncertainty, double degreesOfFreedom) {
    return new VarianceEstimate(uncertainty * uncertainty, degreesOfFreedom);
  }

  /** An input of which only limits ±a are known. */
  static VarianceEstimate within(double a) {
    return new VarianceEstimate(a * a / 3, Double.POSITIVE_INFINITY);
  }

  private static double value(List<Map<String, String>> rows, String quantity) {
    return rows.stream()
        .filter(r -> r.get("quantity").equals(quantity))
        .mapToDouble(r -> Double.parseDouble(r.get("value")))
        .findFirst()
        .orElseThrow();
  }

  /**
   * G.4.1: the effective degrees of freedom are 18.9987; cut to a whole number they would be 18.
   */
  @Test
  void threeInputsOfAProductAndTheTrapOfCutting() {
    List<VarianceEstimate> contributions =
        ReferenceTable.rows("welch_satterthwaite.csv").stream()
            .map(
                r ->
                    typeA(
                        Double.parseDouble(r.get("relative_standard_uncertainty_percent")),
                        Double.parseDouble(r.get("dof"))))
            .toList();
    UncertaintyBudget budget = new UncertaintyBudget(contributions, 0.95);
    assertEquals(1.02946588093, budget.combined(), 1e-10);
    assertEquals(18.9987423143, budget.effectiveDegreesOfFreedom(), 1e-9);
    assertEquals(2.09303343222, budget.coverageFactor(), 1e-9);
    assertEquals(2.15470650612, budget.expanded(), 1e-9);
    assertEquals(2.10092204024, StudentT.twoSided(0.95, 18), 1e-9);
    assertEquals(2.09302405441, StudentT.twoSided(0.95, 19), 1e-9);
  }

  /** H.5: between-day component and uncertainty of the mean of ten days from their variances. */
  @Test
  void theDaysOfTheGuideAsABudgetOfTwoComponents() {
    List<Map<String, String>> rows = ReferenceTable.rows("gum_h5_anova_days.csv");
    double[] means = ReferenceTable.column(rows, "mean_v");
    double[] deviations = ReferenceTable.column(rows, "sd_v");
    double mean = Arrays.stream(means).average().orElseThrow();
    double days = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum() / 9;
    double within = Arrays.stream(deviations).map(s -> s * s).average().orElseThrow();
    double between = days - within / 5;
    assertEquals(42.6386106e-6, Math.sqrt(between), 1e-12);
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(typeA(Math.sqrt(between / 10), 9), typeA(Math.sqrt(within / 50), 40)), 0.95);
    assertEquals(18.0532853e-6, budget.combined(), 1e-12);
  }

  /**
   * H.3: correction of a thermometer at 30 °C. With the line written about the mean reading its two
   * parameters are not correlated, and no covariance is needed.
   */
  @Test
  void theThermometerOfTheGuideAboutItsMeanReading() {
    List<Map<String, String>> rows = ReferenceTable.rows("gum_h3_thermometer_line.csv");
    double[] t = ReferenceTable.column(rows, "reading_degc");
    double[] b = ReferenceTable.column(rows, "correction_degc");
    double meanT = Arrays.stream(t).average().orElseThrow();
    double meanB = Arrays.stream(b).average().orElseThrow();
    double squares = 0;
    double products = 0;
    for (int k = 0; k < t.length; k++) {
      squares += (t[k] - meanT) * (t[k] - meanT);
      products += (t[k] - meanT) * (b[k] - meanB);
    }
    double slope = products / squares;
    double residuals = 0;
    for (int k = 0; k < t.length; k++) {
      residuals += Math.pow(b[k] - meanB - slope * (t[k] - meanT), 2);
    }
    double s = Math.sqrt(residuals / 9);
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(
                typeA(s / Math.sqrt(t.length), 9), typeA((30 - meanT) * s / Math.sqrt(squares), 9)),
            0.95);
    assertEquals(-0.14937681273, meanB + slope * (30 - meanT), 1e-10);
    assertEquals(0.00413859575, budget.combined(), 1e-10);
    assertEquals(0.0041, budget.combined(), 5e-5);
  }

  @Test
  void infinitelyManyDegreesOfFreedomGiveTheNormalQuantile() {
    UncertaintyBudget budget = new UncertaintyBudget(List.of(within(Math.sqrt(3))), 0.95);
    assertEquals(1, budget.combined(), 1e-15);
    assertTrue(Double.isInfinite(budget.effectiveDegreesOfFreedom()));
    // JCGM 100:2008, Table G.1 (from memory).
    assertEquals(1.960, budget.coverageFactor(), 5e-4);
  }

  @Test
  void aBudgetWithoutUncertaintyIsZeroAndNotUndefined() {
    UncertaintyBudget budget = new UncertaintyBudget(List.of(typeA(0, 3)), 0.95);
    assertEquals(0, budget.expanded());
    assertTrue(Double.isInfinite(budget.effectiveDegreesOfFreedom()));
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new VarianceEstimate(-1, 3));
    assertThrows(IllegalArgumentException.class, () -> new VarianceEstimate(Double.NaN, 3));
    assertThrows(IllegalArgumentException.class, () -> typeA(1, 0));
    assertThrows(IllegalArgumentException.class, () -> typeA(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new UncertaintyBudget(List.of(), 1));
  }
}
