package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;

/** Against metafor 3.8-1 (R 4.2.2), R's t.test, and the definition of the restricted likelihood. */
class RandomEffectsTest {

  /** metafor 3.8-1: rma(d, v, method="REML", test="knha"), threshold 1e-15; 30-digit mpmath. */
  @Test
  void agreesWithMetaforOnUnitDifferences() {
    List<Map<String, String>> data = ReferenceTable.rows("meta_units_synthetic.csv");
    for (Map<String, String> expected : ReferenceTable.rows("meta_units_synthetic_results.csv")) {
      List<Map<String, String>> units =
          data.stream().filter(r -> r.get("case").equals(expected.get("case"))).toList();
      RandomEffects.Result result =
          new RandomEffects(0.95)
              .fit(ReferenceTable.column(units, "d_db"), ReferenceTable.column(units, "v_db2"));
      String name = expected.get("case");
      assertEquals(number(expected, "tau2_reml"), result.tauSquared(), 1e-9, name);
      assertEquals(number(expected, "delta_hat"), result.meanDb(), 1e-9, name);
      assertEquals(number(expected, "se_hkj"), result.standardErrorDb(), 1e-9, name);
      assertEquals(number(expected, "ci95_lower"), result.lowDb(), 1e-8, name);
      assertEquals(number(expected, "ci95_upper"), result.highDb(), 1e-8, name);
    }
  }

  /**
   * 13 trials of BCG vaccine (Colditz et al. 1994; Viechtbauer 2010, Table 1), log risk ratios.
   * metafor 3.8-1: rma(yi, vi, test="knha"), and mpmath with 30 digits for τ².
   */
  @Test
  void agreesWithPublishedTrials() {
    List<Map<String, String>> trials = ReferenceTable.rows("meta_bcg_vaccine.csv");
    double[] yi = new double[trials.size()];
    double[] vi = new double[trials.size()];
    for (int i = 0; i < yi.length; i++) {
      double tpos = number(trials.get(i), "tpos");
      double treated = tpos + number(trials.get(i), "tneg");
      double cpos = number(trials.get(i), "cpos");
      double controls = cpos + number(trials.get(i), "cneg");
      yi[i] = Math.log(tpos / treated / (cpos / controls));
      vi[i] = 1 / tpos - 1 / treated + 1 / cpos - 1 / controls;
    }
    RandomEffects.Result result = new RandomEffects(0.95).fit(yi, vi);
    assertEquals(0.31324325813648, result.tauSquared(), 1e-12);
    assertEquals(-0.714532342158, result.meanDb(), 1e-11);
    assertEquals(0.180791744093, result.standardErrorDb(), 1e-11);
    assertEquals(-1.108443713686, result.lowDb(), 1e-11);
    assertEquals(-0.320620970631, result.highDb(), 1e-11);
  }

  /** Student 1908, extra sleep of ten persons. R 4.2.2: t.test(drug_1, drug_2, paired=TRUE). */
  @Test
  void isThePairedTIntervalWithoutSamplingVariance() {
    List<Map<String, String>> sleep = ReferenceTable.rows("ttest_student_1908_sleep.csv");
    double[] first = ReferenceTable.column(sleep, "drug_1");
    double[] second = ReferenceTable.column(sleep, "drug_2");
    double[] d = new double[first.length];
    Arrays.setAll(d, i -> first[i] - second[i]);
    RandomEffects.Result result = new RandomEffects(0.95).fit(d, new double[d.length]);
    assertEquals(-1.58, result.meanDb(), 1e-12);
    assertEquals(-2.459885763277, result.lowDb(), 1e-11);
    assertEquals(-0.700114236723, result.highDb(), 1e-11);
    assertEquals(9, result.degreesOfFreedom());
  }

  @Property(tries = 300)
  void noOtherVarianceIsMoreLikely(
      @ForAll @Size(min = 3, max = 20) List<@DoubleRange(min = -5, max = 5) Double> differences,
      @ForAll @Size(value = 20) List<@DoubleRange(min = 0.01, max = 3) Double> variances,
      @ForAll @DoubleRange(min = 0, max = 30) double other) {
    double[] d = differences.stream().mapToDouble(x -> x).toArray();
    double[] v = variances.stream().mapToDouble(x -> x).limit(d.length).toArray();
    RandomEffects.Result result = new RandomEffects(0.95).fit(d, v);
    assertTrue(
        likelihood(result.tauSquared(), d, v) >= likelihood(other, d, v) - 1e-9,
        () -> "tau² " + result.tauSquared() + " is beaten by " + other);
  }

  @Property(tries = 100)
  void shiftAndScaleCarryOver(
      @ForAll @Size(min = 3, max = 12) List<@DoubleRange(min = -5, max = 5) Double> differences,
      @ForAll @Size(value = 12) List<@DoubleRange(min = 0.01, max = 3) Double> variances) {
    double[] d = differences.stream().mapToDouble(x -> x).toArray();
    double[] v = variances.stream().mapToDouble(x -> x).limit(d.length).toArray();
    double[] shifted = Arrays.stream(d).map(x -> 2 * x + 10).toArray();
    double[] scaled = Arrays.stream(v).map(x -> 4 * x).toArray();
    RandomEffects.Result plain = new RandomEffects(0.95).fit(d, v);
    RandomEffects.Result moved = new RandomEffects(0.95).fit(shifted, scaled);
    assertEquals(2 * plain.meanDb() + 10, moved.meanDb(), 1e-6);
    assertEquals(2 * plain.standardErrorDb(), moved.standardErrorDb(), 1e-6);
  }

  /**
   * Likelihoods with two maxima, of which the greater counts: the upper one three times, the lower
   * one twice. scipy 1.17.1: minimize_scalar around the best of 4000 values of ln τ².
   */
  @ParameterizedTest
  @CsvSource({
    "0.7 0.9 0.5 0.8 -2.8, 0.001 0.109 1.02 0.007 0.623, 1.76216, 0.137387",
    "-0.7 -0.5 -2.1 6.1, 0.003 0.002 28.132 3.608, 9.02422, 0.895606",
    "9.7 -0.6 -2.3 -1.1 -0.9, 7.448 0.048 2.956 0.008 14.772, 15.20669, 0.605992",
    "1 1.1 1.9 4.6 1 -3, 0.003 0.004 26.177 6.075 1.763 1.765, 0.00154, 1.040818",
    "3.3 -2.4 3 -1.7 -0.8 2.6, 0.3 3.625 0.001 9.462 6.349 0.042, 0.07224, 2.795482"
  })
  void ofTwoMaximaTheGreaterCounts(
      String differences, String variances, double tauSquared, double meanDb) {
    RandomEffects.Result result =
        new RandomEffects(0.95).fit(numbers(differences), numbers(variances));
    assertEquals(tauSquared, result.tauSquared(), 1e-5 * (1 + tauSquared));
    assertEquals(meanDb, result.meanDb(), 1e-5);
  }

  private static double[] numbers(String list) {
    return Arrays.stream(list.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  /** Units that scatter less than their variances say: nothing is left between them. */
  @Test
  void unitsThatAgreeHaveNoVarianceBetweenThem() {
    double[] d = {1, 1.1, 0.9, 1.05};
    double[] v = {0.5, 0.3, 0.4, 0.6};
    RandomEffects.Result result = new RandomEffects(0.95).fit(d, v);
    assertEquals(0, result.tauSquared());
    double mean =
        (1 / 0.5 + 1.1 / 0.3 + 0.9 / 0.4 + 1.05 / 0.6) / (1 / 0.5 + 1 / 0.3 + 1 / 0.4 + 1 / 0.6);
    assertEquals(mean, result.meanDb(), 1e-12);
  }

  @Test
  void equalDifferencesHaveNoError() {
    RandomEffects.Result result =
        new RandomEffects(0.95).fit(new double[] {2, 2, 2}, new double[3]);
    assertEquals(2, result.meanDb());
    assertEquals(0, result.standardErrorDb());
    assertEquals(0, result.tauSquared());
  }

  @Test
  void confidenceWidensTheInterval() {
    double[] d = {1, 2, 4};
    double[] v = new double[3];
    // Closed form of Student's quantile on 2 degrees of freedom, with c the confidence:
    // t = c·√(2/(1 - c²)).
    double expected = 0.9 * Math.sqrt(2 / (1 - 0.81)) / (0.95 * Math.sqrt(2 / (1 - 0.9025)));
    assertEquals(
        expected,
        new RandomEffects(0.9).fit(d, v).halfWidthDb()
            / new RandomEffects(0.95).fit(d, v).halfWidthDb(),
        1e-9);
    assertThrows(IllegalArgumentException.class, () -> new RandomEffects(1));
    assertThrows(IllegalArgumentException.class, () -> new RandomEffects(0));
  }

  @Test
  void nonsenseIsRefused() {
    RandomEffects procedure = new RandomEffects(0.95);
    assertThrows(
        IllegalArgumentException.class, () -> procedure.fit(new double[] {1}, new double[] {0}));
    assertThrows(
        IllegalArgumentException.class, () -> procedure.fit(new double[] {1, 2}, new double[] {0}));
    assertThrows(
        IllegalArgumentException.class,
        () -> procedure.fit(new double[] {1, Double.NaN}, new double[2]));
    assertThrows(
        IllegalArgumentException.class,
        () -> procedure.fit(new double[] {1, 2}, new double[] {0, -1}));
  }

  /** The restricted log-likelihood, written down again from its definition. */
  private static double likelihood(double tauSquared, double[] d, double[] v) {
    double sumW = 0;
    double sumWd = 0;
    double logs = 0;
    for (int i = 0; i < d.length; i++) {
      sumW += 1 / (tauSquared + v[i]);
      sumWd += d[i] / (tauSquared + v[i]);
      logs += Math.log(tauSquared + v[i]);
    }
    double squares = 0;
    for (int i = 0; i < d.length; i++) {
      squares += Math.pow(d[i] - sumWd / sumW, 2) / (tauSquared + v[i]);
    }
    return -logs / 2 - Math.log(sumW) / 2 - squares / 2;
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
