package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Levels;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

class RepeatabilityTest {

  /** R 4.2.2: {@code sqrt(nu * s^2 / qchisq(c((1+C)/2, (1-C)/2), nu))}. */
  @ParameterizedTest
  @CsvSource({
    "20, 0.3, 0.95, 0.229517741261, 0.433220846996",
    "3, 2.0, 0.90, 1.239177994186, 5.840017088248"
  })
  void theIntervalIsThatOfR(int freedom, double sd, double confidence, double low, double high) {
    Repeatability.Scatter scatter =
        Repeatability.Scatter.of(Band.ofIndex(0, 12), freedom + 1, 3, freedom, sd * sd, confidence);
    assertEquals(low, scatter.lowDb(), 1e-10);
    assertEquals(high, scatter.highDb(), 1e-10);
    assertEquals(sd, scatter.sdDb(), 1e-14);
  }

  /** R 4.2.2: {@code qt((1+C)/2, nu) * s * sqrt(1 + 1/m)}. */
  @Test
  void aRepeatedMeasurementLiesWithinStudentsHalfWidth() {
    Repeatability.Scatter scatter =
        Repeatability.Scatter.of(Band.ofIndex(0, 12), 10, 3, 20, 0.09, 0.95);
    assertEquals(2.0859634473 * 0.3 * Math.sqrt(2), scatter.repeatDb(1, 0.95), 1e-9);
    assertEquals(2.0859634473 * 0.3 * Math.sqrt(4 / 3.0), scatter.repeatDb(3, 0.95), 1e-9);
  }

  /** Two seatings drawn from a kind lie within the half-width as often as stated. */
  @Test
  void oneSeatingLiesWithinItOfAnotherAsOftenAsStated() {
    Random random = new Random(20261130);
    int held = 0;
    int drawn = 20_000;
    for (int r = 0; r < drawn; r++) {
      double squares = 0;
      for (int k = 0; k < 6; k++) {
        double z = random.nextGaussian();
        squares += z * z;
      }
      Repeatability.Scatter scatter =
          Repeatability.Scatter.of(Band.ofIndex(0, 12), 4, 2.5, 6, squares / 6, 0.9);
      double one = random.nextGaussian();
      double apart = one - random.nextGaussian();
      held += Math.abs(apart) <= scatter.repeatDb(1, 0.9) ? 1 : 0;
    }
    assertEquals(0.9, (double) held / drawn, 0.01); // standard error 0.002
  }

  /** ISO 5725-2, example 1: laboratories as units, replicates (2 to 4 of them) as seatings. */
  @ParameterizedTest
  @CsvSource({"1, 0.0151165066", "2, 0.028779172", "3, 0.01707825128", "4, 0.02607680962"})
  void thePooledDeviationIsTheRepeatabilityOfIso5725(String level, double expected) {
    BandGrid grid = new BandGrid(List.of(Band.ofIndex(0, 12)));
    Map<String, List<Levels>> laboratories = new java.util.TreeMap<>();
    for (Map<String, String> row : ReferenceTable.rows("iso5725_sulfur_in_coal.csv")) {
      if (row.get("level").equals(level)) {
        laboratories
            .computeIfAbsent(row.get("laboratory"), l -> new ArrayList<>())
            .add(Levels.copyOf(grid, new double[] {Double.parseDouble(row.get("sulfur_percent"))}));
      }
    }
    List<List<Levels>> curves = List.copyOf(laboratories.values());
    Levels zero = Levels.copyOf(grid, new double[1]);
    PairedUnits.OnFixture fixture =
        new PairedUnits.OnFixture(
            Collections.nCopies(curves.size(), zero),
            curves.stream().map(c -> List.of(c.size())).toList(),
            zero,
            curves);
    int[] all = java.util.stream.IntStream.range(0, curves.size()).toArray();
    double variance = fixture.seatingVariance(all, new int[] {0}, new double[] {1}).orElseThrow();
    assertEquals(expected, Math.sqrt(variance), 1e-9);
  }

  private static PairedUnits paired(int seatings) {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(SimulatedKind.CLOSED_OVER_EAR)
            .withUnitsPerKind(8)
            .withSeatings(seatings)
            .withBothSidesShare(0)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
            .withSeed(12)
            .draw();
    Study study = drawn.declared(Settings.defaults());
    return new Pairing(study)
        .pair(Anchoring.of(study.settings(), 1).apply(drawn.captures()).value(), Unit.Role.FIT)
        .get(0);
  }

  @Test
  void everyBandHasItsScatterOnTheFreedomOfAllUnits() {
    PairedUnits paired = paired(4);
    Repeatability scatter = Repeatability.of(paired, 0.95);
    for (int b = 0; b < paired.grid().size(); b++) {
      Repeatability.Scatter one = scatter.to().get(b).orElseThrow();
      assertEquals(8 * 3, one.degreesOfFreedom());
      assertEquals(Math.sqrt(paired.to().seatingVariance().db(b)), one.sdDb(), 1e-12);
      assertTrue(one.lowDb() <= one.sdDb() && one.sdDb() <= one.highDb());
    }
  }

  @Test
  void whereNothingIsRepeatedNothingIsSaid() {
    PairedUnits paired = paired(1);
    Repeatability scatter = Repeatability.of(paired, 0.95);
    assertTrue(scatter.from().stream().allMatch(Optional::isEmpty));
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
    assertEquals(List.of(), SeatingsNeeded.of(paired, estimate, 0.95));
  }

  /** At as many seatings as in the study the half-width is the study's own, and it only falls. */
  @Test
  void seatingsBuyWhatTheFormulaSays() {
    PairedUnits paired = paired(5);
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
    for (SeatingsNeeded row : SeatingsNeeded.of(paired, estimate, 0.95)) {
      double squares = 0;
      int bands = 0;
      for (int b = 0; b < paired.grid().size(); b++) {
        BandOutcome.Fitted fitted = (BandOutcome.Fitted) estimate.bands().get(b);
        if (row.region().holds(fitted.band())) {
          BandOutcome.Errors errors = fitted.prediction().errors();
          double t = StudentT.twoSided(0.95, errors.degreesOfFreedom());
          double seating =
              (paired.from().seatingVariance().db(b) + paired.to().seatingVariance().db(b)) / 5;
          squares += t * t * Math.max(errors.varianceDb2(), seating);
          bands++;
        }
      }
      assertEquals(Math.sqrt(squares / bands), row.halfDb().get(3), 1e-9, "five seatings");
      double[] halves = row.halfDb().stream().mapToDouble(h -> h).toArray();
      double[] falling = halves.clone();
      Arrays.sort(falling);
      for (int k = 0; k < halves.length; k++) {
        assertEquals(falling[halves.length - 1 - k], halves[k]);
      }
      assertTrue(row.neverBelowDb() <= halves[halves.length - 1]);
    }
  }
}
