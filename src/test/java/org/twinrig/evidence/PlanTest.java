package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.capture.Unit;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Anchoring;
import org.twinrig.study.DbLimit;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;

/** What holds of every plan, tried on a simulated study. */
class PlanTest {
  private static PairedUnits paired;
  private static KindEstimate estimate;
  private static Plan plan;

  private static final PlanLimits LIMITS = new PlanLimits(DbLimit.everywhere(2.0), 0.5, 5, 40, 10);

  static PairedUnits simulated(int units, int seatings, long seed) {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(SimulatedKind.IN_EAR)
            .withUnitsPerKind(units)
            .withSeatings(seatings)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
            .withSeed(seed)
            .draw();
    Settings settings = Settings.defaults();
    return new Pairing(drawn.declared(settings))
        .pair(Anchoring.of(settings, 1).apply(drawn.captures()).value(), Unit.Role.FIT)
        .get(0);
  }

  @BeforeAll
  static void planOnce() {
    paired = simulated(9, 3, 4);
    estimate = new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(paired);
    plan = Plan.of(paired, estimate, LIMITS, 0.95);
  }

  @Test
  void zonesAreOctavesThatHoldEveryBandOnce() {
    assertEquals(10, plan.zones().size());
    for (int k = 1; k < plan.zones().size(); k++) {
      assertEquals(plan.zones().get(k - 1).toHz(), plan.zones().get(k).fromHz(), 1e-6);
    }
    assertEquals(120, plan.bands().size());
    // The half octave at the lower end joins its neighbour.
    assertEquals(44.67, plan.zones().get(0).toHz(), 0.01);
  }

  @Test
  void whatTheStudyHasIsExpectedOfItsOwnDesign() {
    assertEquals(new Design(9, 3, 3), plan.present());
    assertEquals(54, plan.presentSeatings());
    for (ZonePlan zone : plan.zones()) {
      assertTrue(zone.variance().presentHalfDb() > 0);
      // Equal but where a variance left over is cut at 0.
      assertTrue(zone.variance().halfDb(plan.present()) >= zone.variance().presentHalfDb() - 1e-9);
      assertEquals(
          zone.variance().presentHalfDb(),
          zone.variance().halfDb(plan.present()),
          0.2 * zone.variance().presentHalfDb());
    }
  }

  @Test
  void moreOfEitherHelpsAndNothingGoesBelowTheFloor() {
    for (ZonePlan zone : plan.zones()) {
      double few = zone.variance().halfDb(new Design(10, 3, 3));
      assertTrue(zone.variance().halfDb(new Design(11, 3, 3)) < few);
      assertTrue(zone.variance().halfDb(new Design(10, 4, 3)) <= few);
      assertTrue(zone.variance().halfDb(new Design(10, 3, 4)) <= few);
      assertTrue(zone.variance().halfDb(new Design(40, 10, 10)) > zone.variance().neverBelowDb());
      assertTrue(zone.variance().upperHalfDb(new Design(10, 3, 3)) > few);
    }
  }

  /** Looked through anew, without the order the search goes in. */
  @Test
  void noCheaperDesignServes() {
    int tried = 0;
    for (ZonePlan zone : plan.zones()) {
      Optional<Design> found = zone.evenChance();
      for (int n = 9; n <= 40; n++) {
        for (int a = 3; a <= 10; a++) {
          for (int b = 3; b <= 10; b++) {
            Design design = new Design(n, a, b);
            boolean cheaper = found.isPresent() && design.seatings() < found.get().seatings();
            boolean open =
                zone.outlook() == ZonePlan.Outlook.PLANNED
                    || zone.outlook() == ZonePlan.Outlook.EVEN_CHANCE
                    || zone.outlook() == ZonePlan.Outlook.BEYOND_LIMITS;
            if (open && (found.isEmpty() || cheaper)) {
              assertFalse(zone.expects(design), () -> zone.fromHz() + " Hz: " + design);
              tried++;
            }
          }
        }
      }
      found.ifPresent(d -> assertTrue(zone.expects(d)));
      zone.cautious().ifPresent(d -> assertTrue(zone.meetsCautiously(d)));
    }
    assertTrue(tried > 100, "the study has a zone to plan");
  }

  @Test
  void aToleranceThatAllMeetNeedsNothing() {
    Plan easy =
        Plan.of(paired, estimate, new PlanLimits(DbLimit.everywhere(50), 0.5, 5, 40, 10), 0.95);
    assertTrue(easy.zones().stream().allMatch(z -> z.outlook() == ZonePlan.Outlook.MET));
    assertEquals(Optional.empty(), easy.evenWhole());
    assertEquals(Optional.empty(), easy.whole());
  }

  @Test
  void aToleranceThatNoneMeetsIsSaidToBeHopeless() {
    Plan hard =
        Plan.of(paired, estimate, new PlanLimits(DbLimit.everywhere(0.001), 0.5, 5, 40, 10), 0.95);
    assertTrue(
        hard.zones().stream()
            .allMatch(
                z ->
                    z.outlook() == ZonePlan.Outlook.NEVER
                        || z.outlook() == ZonePlan.Outlook.BEYOND_LIMITS));
    assertEquals(Optional.empty(), hard.evenWhole());
    assertFalse(hard.bands().stream().allMatch(Plan.BandPlan::curable));
  }

  @Test
  void aStepOfTheToleranceCutsAnOctave() {
    DbLimit steps = new DbLimit(List.of(new DbLimit.Step(0, 2), new DbLimit.Step(1000, 3)));
    Plan cut = Plan.of(paired, estimate, new PlanLimits(steps, 0.5, 5, 40, 10), 0.95);
    assertEquals(11, cut.zones().size());
    assertEquals(
        List.of(2.0, 3.0), cut.zones().stream().map(ZonePlan::toleranceDb).distinct().toList());
  }

  @Test
  void fewerUnitsThanAStudyAsksForAreNotMet() {
    Plan few = Plan.of(paired, estimate, new PlanLimits(LIMITS.tolerance(), 0.5, 12, 40, 10), 0.95);
    assertTrue(few.zones().stream().noneMatch(z -> z.outlook() == ZonePlan.Outlook.MET));
    few.zones().stream()
        .flatMap(z -> z.evenChance().stream())
        .forEach(d -> assertTrue(d.units() >= 12));
  }

  @Test
  void withoutRepeatedSeatingsOnlyUnitsArePlanned() {
    PairedUnits once = simulated(9, 1, 4);
    Plan single =
        Plan.of(
            once, new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(once), LIMITS, 0.95);
    List<Design> designs = single.zones().stream().flatMap(z -> z.evenChance().stream()).toList();
    assertFalse(designs.isEmpty());
    designs.forEach(d -> assertEquals(2, d.seatingsFrom() + d.seatingsTo()));
  }

  @Test
  void nonsenseIsRefused() {
    DbLimit limit = DbLimit.everywhere(1);
    assertThrows(IllegalArgumentException.class, () -> new PlanLimits(limit, 0.5, 5, 4, 10));
    assertThrows(IllegalArgumentException.class, () -> new PlanLimits(limit, 0.5, 5, 10, 1));
    assertThrows(IllegalArgumentException.class, () -> new PlanLimits(limit, 0, 5, 10, 2));
    assertThrows(IllegalArgumentException.class, () -> new Design(0, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> new Design(1, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new Design(1, 1, 0));
    assertEquals(30, new Design(5, 2, 4).seatings());
  }
}
