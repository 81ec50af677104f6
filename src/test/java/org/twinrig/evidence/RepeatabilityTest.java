package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** Against the worked example of ISO 5725-2 and against quantiles of R. */
class RepeatabilityTest {
  private static final BandGrid ONE = BandGrid.covering(990, 1010, 1);

  private static Levels level(double db) {
    return Levels.copyOf(ONE, new double[] {db});
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(v -> v).average().orElseThrow();
  }

  /** Units with their seatings; the same on both fixtures. */
  private static PairedUnits paired(Map<String, List<Double>> units) {
    PairedUnits.OnFixture fixture =
        new PairedUnits.OnFixture(
            units.values().stream().map(v -> level(mean(v))).toList(),
            units.values().stream().map(v -> List.of(v.size())).toList(),
            level(0),
            units.values().stream()
                .map(v -> v.stream().map(RepeatabilityTest::level).toList())
                .toList());
    return new PairedUnits("kind", ONE, List.copyOf(units.keySet()), fixture, fixture);
  }

  private static Map<String, List<Double>> sulfur(int level) {
    Map<String, List<Double>> laboratories = new LinkedHashMap<>();
    for (Map<String, String> row : ReferenceTable.rows("iso5725_sulfur_in_coal.csv")) {
      if (Integer.parseInt(row.get("level")) == level) {
        laboratories
            .computeIfAbsent("laboratory " + row.get("laboratory"), l -> new ArrayList<>())
            .add(Double.valueOf(row.get("sulfur_percent")));
      }
    }
    return laboratories;
  }

  /** ISO 5725-2, example 1: printed and exact values of the table's header. */
  @Test
  void itIsTheRepeatabilityOfTheStandard() {
    double[] printed = {0.015, 0.029, 0.017, 0.026};
    double[] exact = {0.0151165066, 0.028779172, 0.01707825128, 0.02607680962};
    for (int level = 1; level <= 4; level++) {
      Repeatability found = Repeatability.of(paired(sulfur(level)), Optional.empty(), 0.95);
      assertEquals(1, found.from().size());
      assertEquals(printed[level - 1], found.from().get(0).sd().sdDb(), 5e-4);
      assertEquals(exact[level - 1], found.from().get(0).sd().sdDb(), 1e-10);
      assertEquals(found.from(), found.to());
      assertEquals(8, found.from().get(0).units());
    }
  }

  /** R 4.2.2: {@code s*sqrt(19/qchisq(.975,19))}, {@code s*sqrt(19/qchisq(.025,19))}. */
  @Test
  void itsIntervalIsThatOfR() {
    Repeatability.AtBand found =
        Repeatability.of(paired(sulfur(1)), Optional.empty(), 0.95).from().get(0);
    assertEquals(19, found.degreesOfFreedom());
    assertEquals(0.0114959580651, found.sd().lowDb(), 1e-10);
    assertEquals(0.0220787407772, found.sd().highDb(), 1e-10);
  }

  /** R 4.2.2: {@code sqrt(v/qchisq(.975,v))}, {@code sqrt(v/qchisq(.025,v))}. */
  @Test
  void theFactorsAreThoseOfR() {
    double[][] rows = {
      {1, 0.446149184921, 31.9101593496},
      {4, 0.599133139134, 2.87355563408},
      {19, 0.76049039433, 1.46057163612},
      {60, 0.848709738927, 1.21743559799},
      {208, 0.912441658187, 1.10629184885}
    };
    for (double[] row : rows) {
      DeviationInterval interval = DeviationInterval.of(1, (int) row[0], 0.95);
      assertEquals(row[1], interval.lowDb(), 1e-7 * row[1]);
      assertEquals(row[2], interval.highDb(), 1e-7 * row[2]);
    }
    assertThrows(IllegalArgumentException.class, () -> DeviationInterval.of(1, 0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> DeviationInterval.of(-1, 1, 0.95));
    assertThrows(IllegalArgumentException.class, () -> DeviationInterval.of(1, 1, 1));
  }

  @Test
  void theCheckUnitIsLeftOut() {
    Map<String, List<Double>> units = sulfur(1);
    Repeatability without = Repeatability.of(paired(units), Optional.empty(), 0.95);
    units.put("Oak 1", List.of(0.0, 9.0, 3.0));
    assertEquals(without, Repeatability.of(paired(units), Optional.of("Oak 1"), 0.95));
    assertTrue(
        Repeatability.of(paired(units), Optional.empty(), 0.95).from().get(0).sd().sdDb() > 1);
  }

  @Test
  void seatingThatWasNeverRepeatedHasNone() {
    Map<String, List<Double>> units = new LinkedHashMap<>();
    units.put("Alder 1", List.of(1.0));
    units.put("Alder 2", List.of(2.0));
    Repeatability found = Repeatability.of(paired(units), Optional.empty(), 0.95);
    assertEquals(List.of(), found.from());
    assertTrue(found.seatingVariance(0).isEmpty());
    assertTrue(Repeatability.over(found.from(), Region.MIDDLE).isEmpty());
  }

  /** t of seven degrees of freedom from R 4.2.2: {@code qt(.975,7)}. */
  @Test
  void seatingsBuyWhatTheVariancesSay() {
    Random random = new Random(3);
    Map<String, List<Double>> old = new LinkedHashMap<>();
    Map<String, List<Double>> now = new LinkedHashMap<>();
    for (int i = 0; i < 8; i++) {
      double own = random.nextGaussian();
      old.put("Alder " + i, List.of(random.nextGaussian(), random.nextGaussian()));
      now.put("Alder " + i, List.of(own + random.nextGaussian(), own + random.nextGaussian()));
    }
    PairedUnits paired =
        new PairedUnits(
            "kind", ONE, List.copyOf(old.keySet()), paired(old).from(), paired(now).from());
    Repeatability repeatability = Repeatability.of(paired, Optional.empty(), 0.95);
    KindEstimate estimate = TransferEstimator.withDefaults().fit(paired);
    double tau2 = ((BandOutcome.Fitted) estimate.bands().get(0)).mean().tauSquared();
    double sA = repeatability.from().get(0).sd().sdDb();
    double sB = repeatability.to().get(0).sd().sdDb();
    List<SeatingGain> gains = SeatingGain.of(repeatability, estimate, 0.95);
    assertEquals(1, gains.size());
    SeatingGain gain = gains.get(0);
    assertEquals(Region.MIDDLE, gain.region());
    assertEquals(10, gain.steps().size());
    for (SeatingGain.Step step : gain.steps()) {
      double v = (sA * sA + sB * sB) / step.seatings();
      assertEquals(2.36462425159 * Math.sqrt((tau2 + v) * 9 / 8), step.halfDb(), 1e-8);
      assertEquals(2.36462425159 * Math.sqrt(v * 9 / 8), step.seatingHalfDb(), 1e-8);
      assertEquals(v / (tau2 + v), step.share().orElseThrow(), 1e-12);
    }
    assertEquals(2.36462425159 * Math.sqrt(tau2 * 9 / 8), gain.endlessHalfDb(), 1e-8);
    assertEquals(
        List.of(),
        SeatingGain.of(
            new Repeatability("kind", List.of(), Collections.emptyList()), estimate, 0.95));
  }
}
