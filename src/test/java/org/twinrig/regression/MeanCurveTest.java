package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Quantiles of Student's t by scipy 1.17.1 (scipy.stats.t.ppf). */
class MeanCurveTest {
  private static UnitSample sample(double... values) {
    return new UnitSample(
        IntStream.range(0, values.length).toArray(), values, new double[values.length]);
  }

  /** Standard deviation √(5/3) of four, so that the error of their mean is √(5/12). */
  private static final UnitSample FOUR = sample(1, 2, 3, 4);

  private static MeanCurve.Mean first(MeanCurve procedure, int units, List<UnitSample> samples) {
    return procedure.fit(units, samples).bands().get(0).orElseThrow();
  }

  /** Eight sign patterns are too few for 95 %; bands without a mean are not counted. */
  @Test
  void withFewUnitsBonferroniStandsAlone() {
    List<UnitSample> samples = new ArrayList<>(Collections.nCopies(10, FOUR));
    samples.add(sample(1, 2));
    samples.add(sample());
    MeanCurve.Mean mean = first(new MeanCurve(0.95, 1), 4, samples);
    assertEquals(2.5, mean.estimate().meanDb(), 1e-12);
    assertEquals(3.182446305284 * Math.sqrt(5.0 / 12), mean.estimate().halfWidthDb(), 1e-9);
    assertEquals(7.453318505151 * Math.sqrt(5.0 / 12), mean.simultaneousHalfDb(), 1e-9);
    List<java.util.Optional<MeanCurve.Mean>> all = new MeanCurve(0.95, 1).fit(4, samples).bands();
    assertTrue(all.get(9).isPresent() && all.get(10).isEmpty() && all.get(11).isEmpty());
  }

  /**
   * At 87.5 % eight patterns are just enough. Residuals ±0.5 and ±1.5: the second largest of the
   * eight sums is 3, so that {@code m = 3/4}, {@code s² = (5/4 - 9/16)/3} and {@code q = 1.57},
   * less than the pointwise quantile, which stands. A little more confidence, and Bonferroni's
   * does.
   */
  @Test
  void patternsCountFromTheNumberThatTheQuantileNeeds() {
    List<UnitSample> six = Collections.nCopies(6, FOUR);
    MeanCurve enough = new MeanCurve(0.875, 1);
    double se = Math.sqrt(5.0 / 12);
    assertEquals(2.113086729236 * se, first(enough, 4, six).simultaneousHalfDb(), 1e-9);
    MeanCurve more = new MeanCurve(0.876, 1);
    assertEquals(4.485678716075 * se, first(more, 4, six).simultaneousHalfDb(), 1e-9);
  }

  /** Bands that are all the same need no more than one alone: far less than Bonferroni asks. */
  @Test
  void bandsThatGoTogetherNeedLittleMoreThanOne() {
    UnitSample eight = sample(0.3, -1.2, 0.8, 2.4, -0.6, 1.1, -2.2, 0.1);
    double se = new RandomEffects(0.95).fit(eight.valuesDb(), new double[8]).standardErrorDb();
    double alone = first(new MeanCurve(0.95, 1), 8, List.of(eight)).simultaneousHalfDb();
    double six =
        first(new MeanCurve(0.95, 1), 8, Collections.nCopies(6, eight)).simultaneousHalfDb();
    double q =
        new SignFlipInterval(0.95, 1)
            .fit(
                IntStream.range(0, 8)
                    .mapToObj(i -> new double[] {eight.valuesDb()[i]})
                    .toArray(double[][]::new))
            .multiplier();
    assertEquals(2.364624251593 * se, alone, 1e-9, "one band: the pointwise interval");
    assertEquals(Math.max(2.364624251593, q) * se, six, 1e-9);
    assertTrue(six < 3.6 * se, "t of Bonferroni over six bands is 3.64");
  }

  /** Seven units, of which a band each lacks one, and a band of two units that has no mean. */
  @Test
  void everyBandIsFlippedWithItsOwnUnits() {
    double none = Double.NaN;
    double[][] rows = {
      {none, 0.4}, {1.3, -1.1}, {-0.7, 0.9}, {2.1, 1.6}, {0.2, -0.3}, {-1.5, none}, {0.8, -2.2}
    };
    List<UnitSample> samples =
        List.of(
            new UnitSample(
                new int[] {1, 2, 3, 4, 5, 6},
                new double[] {1.3, -0.7, 2.1, 0.2, -1.5, 0.8},
                new double[6]),
            new UnitSample(
                new int[] {0, 1, 2, 3, 4, 6},
                new double[] {0.4, -1.1, 0.9, 1.6, -0.3, -2.2},
                new double[6]),
            new UnitSample(new int[] {0, 6}, new double[] {-40, 40}, new double[2]));
    assertEquals(
        new SignFlipInterval(0.95, 1).fit(rows),
        new MeanCurve(0.95, 1).fit(7, samples).simultaneous());
  }
}
