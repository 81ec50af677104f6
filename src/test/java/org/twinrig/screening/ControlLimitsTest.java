package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** Against the worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2. */
class ControlLimitsTest {
  private static final double[] FLOW =
      ReferenceTable.column(ReferenceTable.rows("spc_individuals.csv"), "flow_rate");

  /** The textbook's limits, {@code mean ± 3·MR/1.128}: what the medians are held against. */
  private static ControlLimits byMeanRange(double[] values) {
    double ranges =
        IntStream.range(1, values.length)
            .mapToDouble(i -> Math.abs(values[i] - values[i - 1]))
            .sum();
    return new ControlLimits(
        Arrays.stream(values).average().orElseThrow(), ranges / (values.length - 1) / 1.128, 3);
  }

  private static DriftChart.Point point(String session, double valueDb, int seatings) {
    return new DriftChart.Point(session, valueDb, seatings, Optional.empty(), false);
  }

  /** Section 6.3.2.2; the printed digits, and the unrounded ones of the table's header. */
  @Test
  void theTextbooksLimitsAreThoseOfTheHandbook() {
    ControlLimits limits = byMeanRange(FLOW);
    assertEquals(50.81, limits.centreDb(), 1e-12);
    assertEquals(1.8778, limits.sigmaDb() * 1.128, 5e-5);
    assertEquals(55.804089835, limits.upperDb(), 1e-9);
    assertEquals(45.815910165, limits.lowerDb(), 1e-9);
  }

  /** R 4.2.2: {@code median(x)}, {@code median(abs(diff(x)))/(sqrt(2)*qnorm(.75))}. */
  @Test
  void theLimitsByMediansAreThoseOfR() {
    ControlLimits limits = ControlLimits.byMedianRange(FLOW);
    assertEquals(51.25, limits.centreDb(), 1e-12);
    assertEquals(1.57253712376, limits.sigmaDb(), 1e-9);
  }

  /** Section 6.3.2.4: starting value 50, s 2.0539, weight 0.3. */
  @Test
  void theMovingAverageIsThatOfTheHandbook() {
    List<Map<String, String>> rows = ReferenceTable.rows("spc_ewma.csv");
    double[] exact = ReferenceTable.column(rows, "ewma");
    double[] printed = ReferenceTable.column(rows, "ewma_printed");
    double[] halves = ReferenceTable.column(rows, "exact_half_width");
    ControlLimits limits = new ControlLimits(50, 2.0539, 3);
    double[] average = limits.averagesDb(ReferenceTable.column(rows, "x"));
    assertEquals(20, average.length);
    for (int i = 0; i < average.length; i++) {
      assertEquals(exact[i], average[i], 1e-9);
      assertEquals(printed[i], average[i], 0.005 + 1e-9);
      assertEquals(halves[i], limits.averageHalfWidthDb(i + 1), 1e-9);
    }
    assertEquals(52.5884, 50 + limits.averageHalfWidthDb(1000), 5e-5);
  }

  /**
   * Why limits are not taken from the mean range: follows from {@code (1 - 1/n) < 6/(1.128(n-1))}
   * for n below 8.
   */
  @Property
  void amongFewerThanEightNoOddValueLiesOutsideLimitsItWidened(
      @ForAll @IntRange(min = 3, max = 7) int n,
      @ForAll @IntRange(min = 1, max = 5) int at,
      @ForAll @DoubleRange(min = 0.1, max = 1000) double odd) {
    double[] values = new double[n];
    values[Math.min(at, n - 2)] = odd;
    assertTrue(byMeanRange(values).upperDb() > odd);
  }

  @Property
  void amongSixTheMediansFindAnOddValueAnywhere(
      @ForAll @IntRange(min = 0, max = 5) int at,
      @ForAll @DoubleRange(min = 3, max = 1000) double odd) {
    double[] values = {0.1, -0.1, 0.05, -0.05, 0.1, -0.1};
    values[at] += odd;
    List<DriftChart.Point> sessions =
        IntStream.range(0, values.length).mapToObj(i -> point("s" + i, values[i], 1)).toList();
    assertTrue(DriftChart.of(Optional.empty(), sessions).side("s" + at) > 0);
  }

  /** scipy 1.17: {@code t.ppf(1 - 0.05/(16*n), n/2 + 1)}. */
  @Test
  void theFactorIsStudentsForTheWholeStudy() {
    assertEquals(
        8.518951, ControlLimits.byMedianRange(new double[] {1, 2, 3, 4, 5, 6}).sigmas(), 1e-5);
    assertEquals(6.512061, ControlLimits.byMedianRange(FLOW).sigmas(), 1e-5);
  }

  /** What the report promises: a steady level is outside in at most 2.5 % of studies. */
  @Test
  void aSteadyLevelIsOutsideInFewStudies() {
    Random random = new Random(5);
    for (int sessions : new int[] {6, 9, 20}) {
      int accused = 0;
      for (int study = 0; study < 2000; study++) {
        boolean outside = false;
        for (int fixture = 0; fixture < 2; fixture++) {
          List<DriftChart.Point> values =
              IntStream.range(0, sessions)
                  .mapToObj(i -> point("s" + i, random.nextGaussian(), 1))
                  .toList();
          outside |=
              DriftChart.of(Optional.empty(), values).points().stream()
                  .anyMatch(DriftChart.Point::outside);
        }
        accused += outside ? 1 : 0;
      }
      double share = accused / 2000.0;
      assertTrue(share > 0.005 && share < 0.032, () -> sessions + " sessions: " + share);
    }
  }

  @Test
  void withFiveSessionsThereAreNoLimitsAndWithSixThereAre() {
    List<DriftChart.Point> six = IntStream.range(0, 6).mapToObj(i -> point("s" + i, i, 2)).toList();
    DriftChart five = DriftChart.of(Optional.empty(), six.subList(0, 5));
    assertEquals(Optional.empty(), five.limits());
    assertEquals(5, five.points().size());
    assertTrue(five.points().stream().allMatch(p -> p.ewma().isEmpty() && !p.outside()));
    assertEquals(Optional.empty(), five.limits());
    assertTrue(DriftChart.of(Optional.empty(), six).limits().isPresent());
  }

  @Test
  void nothingIsSteadierThanWhatIsRead() {
    ControlLimits limits = ControlLimits.byMedianRange(new double[] {1, 1, 1, 1, 1, 1});
    assertEquals(0.01 / Math.sqrt(12), limits.sigmaDb());
    assertThrows(IllegalArgumentException.class, () -> new ControlLimits(0, -1, 3));
    assertThrows(IllegalArgumentException.class, () -> new ControlLimits(Double.NaN, 1, 3));
  }
}
