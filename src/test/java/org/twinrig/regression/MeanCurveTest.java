package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** Quantiles of Student's t by scipy 1.17.1 (scipy.stats.t.ppf). */
class MeanCurveTest {
  private static UnitSample sample(double... values) {
    return new UnitSample(
        IntStream.range(0, values.length).toArray(), values, new double[values.length]);
  }

  /** Standard deviation √(5/3) of four, so that the error of their mean is √(5/12). */
  private static final UnitSample FOUR = sample(1, 2, 3, 4);

  /** Ten bands of equal scatter; bands without a mean are not counted. */
  @Test
  void theIntervalOfAllBandsIsBonferronis() {
    List<UnitSample> samples = new ArrayList<>(Collections.nCopies(10, FOUR));
    samples.add(sample(1, 2));
    samples.add(sample());
    List<Optional<MeanCurve.Mean>> means = new MeanCurve(0.95).fit(samples, 12);
    MeanCurve.Mean mean = means.get(0).orElseThrow();
    assertEquals(2.5, mean.estimate().meanDb(), 1e-12);
    assertEquals(3.182446305284 * Math.sqrt(5.0 / 12), mean.estimate().halfWidthDb(), 1e-9);
    assertEquals(7.453318505151 * Math.sqrt(5.0 / 12), mean.simultaneousHalfDb(), 1e-9);
    assertTrue(means.get(9).isPresent() && means.get(10).isEmpty() && means.get(11).isEmpty());
  }

  /** One band alone has one interval. */
  @Test
  void oneBandHasThePointwiseIntervalTwice() {
    MeanCurve.Mean mean = new MeanCurve(0.95).fit(List.of(FOUR), 12).get(0).orElseThrow();
    assertEquals(mean.estimate().halfWidthDb(), mean.simultaneousHalfDb(), 1e-12);
  }

  /**
   * R 4.2.2 on the committed numbers, {@code simultaneous.R} beside them: squared standard errors
   * averaged within two bands of twelve to the octave, fewer at the ends and beside a band without
   * a mean; {@code qt} on each band's own degrees of freedom.
   */
  @Test
  void halfWidthsAreThoseOfR() {
    List<Map<String, String>> rows = ReferenceTable.rows("simultaneous.csv");
    List<UnitSample> samples = new ArrayList<>();
    for (Map<String, String> row : rows) {
      samples.add(
          sample(
              Arrays.stream(row.get("d").split(" ", -1))
                  .filter(v -> !v.isEmpty())
                  .mapToDouble(Double::parseDouble)
                  .toArray()));
    }
    List<Optional<MeanCurve.Mean>> means = new MeanCurve(0.95).fit(samples, 12);
    for (int b = 0; b < rows.size(); b++) {
      String half = rows.get(b).get("half_db");
      assertEquals(half.isEmpty(), means.get(b).isEmpty());
      if (!half.isEmpty()) {
        assertEquals(
            Double.parseDouble(half), means.get(b).get().simultaneousHalfDb(), 1e-9, "band " + b);
      }
    }
  }
}
