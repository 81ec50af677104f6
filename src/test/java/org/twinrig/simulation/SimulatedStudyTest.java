package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.twinrig.PlannedStudy;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.response.Levels;

class SimulatedStudyTest {
  private static final SimulationPlan SMALL =
      SimulationPlan.standard()
          .withKinds(SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR)
          .withUnitsPerKind(3)
          .withSeatings(2);

  @Test
  void theSamePlanGivesTheSameCaptures() {
    assertEquals(SMALL.draw().captures(), SMALL.draw().captures());
    assertNotEquals(SMALL.draw().captures(), SMALL.withSeed(2).draw().captures());
  }

  @Test
  void theNumberOfThreadsChangesNothing() throws Exception {
    SimulatedStudy many = SMALL.draw();
    ForkJoinPool one = new ForkJoinPool(1);
    try {
      List<Capture> captures = one.submit(() -> SMALL.draw().captures()).get();
      assertEquals(many.captures(), captures);
      TrueLevels truth = truth(SMALL);
      assertEquals(
          truth.meanTransfer(SimulatedKind.IN_EAR, 50),
          one.submit(() -> truth.meanTransfer(SimulatedKind.IN_EAR, 50)).get());
    } finally {
      one.shutdown();
    }
  }

  /** A unit is the same whoever else is in the study. */
  @Test
  void unitsDoNotDependOnTheSizeOfTheStudy() {
    List<Capture> few = SMALL.withKinds(SimulatedKind.IN_EAR).draw().captures();
    List<Capture> many =
        SMALL.withKinds(SimulatedKind.IN_EAR).withUnitsPerKind(9).draw().captures();
    for (int i = 0; i < few.size(); i++) {
      assertEquals(few.get(i).response(), many.get(i).response());
    }
  }

  @Test
  void everyUnitIsSeatedOnBothFixtures() {
    SimulatedStudy study = SMALL.draw();
    assertEquals(6, study.units().size());
    assertEquals(6 * 2 * 2, study.captures().size());
    assertEquals("plate", study.from().name());
    assertEquals("head", study.to().name());
    assertEquals(Set.of(Unit.Role.FIT), roles(study));
    assertEquals(
        Set.of(Unit.Role.FIT, Unit.Role.HOLDOUT), roles(PlannedStudy.heldOut(SMALL, 2).draw()));
  }

  /** Many units and seatings lead to the truth: within four standard errors in every band. */
  @Test
  void theMeanOfManyUnitsTendsToTheTruth() {
    SimulationPlan plan =
        SimulationPlan.standard().withAxis(new SimulationPlan.Axis(120, 10, 22_000));
    for (SimulatedKind kind : List.of(SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR)) {
      int units = 300;
      KindFigures figures = KindFigures.of(plan, kind, units);
      Levels truth = plan.draw().trueMeanTransfer(kind, KindFigures.GRID, KindFigures.ANCHOR);
      for (int b = 0; b < KindFigures.GRID.size(); b++) {
        double error = figures.meanDb()[b] - truth.db(b);
        double allowed = 4 * figures.unitSdDb()[b] / Math.sqrt(units) + 0.02;
        int band = b;
        assertTrue(
            Math.abs(error) < allowed,
            () -> kind + " band " + KindFigures.GRID.band(band).midHz() + " Hz: " + error);
      }
    }
  }

  /** A unit's own truth is what its seatings tend to: within five standard errors. */
  @Test
  void aUnitsOwnTruthIsTheMeanOfItsSeatings() {
    int seatings = 400;
    SimulatedStudy study =
        SMALL.withKinds(SimulatedKind.IN_EAR).withUnitsPerKind(1).withSeatings(seatings).draw();
    Levels truth =
        study.trueUnitTransfer(study.units().get(0).name(), KindFigures.GRID, KindFigures.ANCHOR);
    double[][] levels =
        study.captures().stream()
            .map(capture -> KindFigures.anchored(capture.response()))
            .toArray(double[][]::new);
    for (int b = 0; b < KindFigures.GRID.size(); b++) {
      double mean = 0;
      double square = 0;
      for (int s = 0; s < seatings; s++) {
        double difference = levels[seatings + s][b] - levels[s][b];
        mean += difference / seatings;
        square += difference * difference / seatings;
      }
      double allowed = 5 * Math.sqrt((square - mean * mean) / seatings) + 0.01;
      assertEquals(truth.db(b), mean, allowed);
    }
  }

  /** The skewed effect of leaks: the level of the middle seating is not the mean level. */
  @Test
  void theTruthIsTheMeanOverSeatingsNotTheMiddleSeating() {
    Specimen specimen =
        new Specimen(
            3, SimulatedKind.CLOSED_OVER_EAR, 0, List.of(Side.M), Specimen.Sampling.INDEPENDENT);
    TrueLevels truth = truth(SimulationPlan.standard());
    Bench to = truth.benches().get(1);
    FittedUnit fitted = specimen.on(to.fixture(), Side.M, 1);
    double middle = truth.levelsDb(to, fitted, List.of(new Placement(0, 0, 0, 0, 0, 0)))[0];
    double expected = truth.on(1, specimen).db(0);
    assertTrue(expected < middle - 0.1, () -> expected + " against " + middle);
  }

  private static TrueLevels truth(SimulationPlan plan) {
    List<Bench> benches = Bench.both(FixturePair.PLATE_TO_HEAD, plan.axis().frequenciesHz());
    return new TrueLevels(benches, KindFigures.GRID, KindFigures.ANCHOR);
  }

  @Test
  void troublesArePlantedAndNamed() {
    SimulatedStudy study = SimulationPlan.demo().draw();
    long lost = study.simulated().stream().filter(c -> c.planted().equals(lostSeal())).count();
    long excluded = study.captures().stream().filter(c -> c.entry().excludedByLab()).count();
    assertTrue(lost >= 6, () -> "lost seals " + lost);
    assertTrue(excluded >= 1 && excluded < lost, () -> "excluded " + excluded);
    assertTrue(
        study.simulated().stream()
            .filter(c -> c.capture().entry().excludedByLab())
            .allMatch(c -> c.planted().equals(lostSeal())));
    assertEquals(
        1, study.sessions().stream().filter(s -> Math.abs(s.correctionDb()) > 0.4).count());
    assertTrue(SMALL.draw().simulated().stream().allMatch(c -> c.planted().isEmpty()));
  }

  /**
   * Common practice, no source: without a seal the bass of a closed unit falls by 10 dB or more.
   */
  @Test
  void aLostSealCostsTheBass() {
    SimulatedStudy study =
        PlannedStudy.troubled(
                SMALL.withKinds(SimulatedKind.CLOSED_OVER_EAR),
                new SimulationPlan.Troubles(1, 0, 0, 0, 0, 0))
            .draw();
    List<Capture> head =
        study.captures().stream().filter(c -> c.entry().fixture().equals("head")).toList();
    for (int i = 0; i < head.size(); i += 2) {
      double lost = KindFigures.anchored(head.get(i).response())[12];
      double sealed = KindFigures.anchored(head.get(i + 1).response())[12];
      assertTrue(lost < sealed - 10, () -> lost + " against " + sealed);
    }
  }

  @Test
  void theCatalogueHoldsFreshUnits() {
    SimulatedStudy study = SimulationPlan.demo().draw();
    assertEquals(44, study.catalogue().size());
    Set<String> names = new HashSet<>(study.units().stream().map(Unit::name).toList());
    for (SimulatedGraph graph : study.catalogue()) {
      assertTrue(names.add(graph.unit()), graph.unit());
    }
    Levels truth = study.trueOnNewFixture("G-001", KindFigures.GRID, KindFigures.ANCHOR);
    assertEquals(KindFigures.GRID.size(), truth.present());
    assertThrows(
        IllegalArgumentException.class,
        () -> study.trueOnNewFixture("G-999", KindFigures.GRID, KindFigures.ANCHOR));
    assertThrows(
        IllegalArgumentException.class,
        () -> study.trueUnitTransfer("Nobody 1", KindFigures.GRID, KindFigures.ANCHOR));
  }

  @Test
  void plansRefuseNonsense() {
    assertThrows(IllegalArgumentException.class, () -> SMALL.withUnitsPerKind(0));
    assertThrows(IllegalArgumentException.class, () -> SMALL.withSeatings(0));
    assertThrows(IllegalArgumentException.class, () -> SMALL.withBothSidesShare(1.01));
    assertThrows(IllegalArgumentException.class, () -> SMALL.withBothSidesShare(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> SMALL.withCatalogueGraphs(-1));
    assertThrows(IllegalArgumentException.class, () -> SMALL.withGroups(List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> SMALL.withKinds(SimulatedKind.IN_EAR, SimulatedKind.IN_EAR));
    assertThrows(IllegalArgumentException.class, () -> new SimulationPlan.Axis(1, 10, 22_000));
    assertThrows(
        IllegalArgumentException.class, () -> new SimulationPlan.Axis(100, 10, Double.NaN));
    assertEquals(
        "a kind must be one of open over-ear, closed over-ear, on-ear, in-ear, but is over-ear",
        assertThrows(IllegalArgumentException.class, () -> SimulatedKind.ofLabel("over-ear"))
            .getMessage());
    assertEquals(SimulatedKind.IN_EAR, SimulatedKind.ofLabel("in-ear"));
  }

  @Test
  void namesNeverRepeat() {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < 2000; i++) {
      assertTrue(names.add(Member.unitName(i)), Member.unitName(i));
    }
  }

  private static Optional<SimulatedCapture.Trouble> lostSeal() {
    return Optional.of(SimulatedCapture.Trouble.LOST_SEAL);
  }

  private static Set<Unit.Role> roles(SimulatedStudy study) {
    return new HashSet<>(study.units().stream().map(Unit::role).toList());
  }
}
