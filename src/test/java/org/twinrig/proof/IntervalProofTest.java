package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PredictionModel;

/** The proof on few real studies: what it must not depend on, and what it must catch. */
class IntervalProofTest {
  private static final ProofPlan SMALL =
      ProofPlan.standard(3, 11)
          .withUnitsPerKind(List.of(6))
          .withKinds(List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.IN_EAR))
          .withSeatings(2);

  private static ProofOutcome run(ProofPlan plan, int threads) {
    return IntervalProof.run(plan, threads, (units, done) -> {});
  }

  @Test
  void figuresDependNeitherOnThreadsNorOnWhatElseIsTried() {
    ProofOutcome one = run(SMALL, 1);
    assertEquals(one, run(SMALL, 2));
    ProofOutcome more = run(SMALL.withUnitsPerKind(List.of(5, 6)), 2);
    assertEquals(one.rows(), more.rows().subList(one.rows().size(), 2 * one.rows().size()));
  }

  @Test
  void everyBandOfEveryUnseenUnitIsJudgedOnce() {
    ProofOutcome outcome = run(SMALL, 2);
    // 2 sorts of old graph, 2 kinds, 4 regions and 2 summaries.
    assertEquals(2 * 2 * 6, outcome.rows().size());
    for (ProofRow row : outcome.rows()) {
      if (row.place().span().equals(Span.ALL_BANDS)) {
        // 3 studies, 4 unseen units, 120 bands from 20 Hz to below 20 kHz.
        assertEquals(3 * 4 * 120, row.judgements());
      }
    }
  }

  @Test
  void theWatcherHearsOfEveryStudy() {
    List<Integer> heard = new ArrayList<>();
    IntervalProof.run(SMALL, 1, (units, done) -> heard.add(units * 100 + done));
    assertEquals(List.of(601, 602, 603), heard);
  }

  @Test
  void intervalsOfHalfTheWidthAreCaught() {
    Promise halved = promise(12, j -> withHalf(j, j.halfDb() / 2));
    assertTrue(halved.mostAveraged().offset().coverage().value() < 0.85);
    assertTrue(
        halved.breaches().stream().anyMatch(b -> b.below() && !b.perhapsChance()),
        () -> halved.breaches().toString());
  }

  @Test
  void intervalsOfFourTimesTheWidthAreCaught() {
    Promise wide = promise(4, j -> withHalf(j, j.halfDb() * 4));
    assertTrue(wide.breaches().stream().anyMatch(b -> !b.below()), wide::toString);
  }

  /** A systematic error of the transfer, such as a wrong anchor, must show as well. */
  @Test
  void aTransferThatIsOffIsCaught() {
    Promise off =
        promise(
            4,
            j -> new Judgement(j.kind(), j.graphSeatings(), j.band(), j.errorDb() + 2, j.halfDb()));
    assertTrue(off.leastRegion().offset().coverage().value() < 0.3, off::toString);
  }

  private static Judgement withHalf(Judgement j, double halfDb) {
    return new Judgement(j.kind(), j.graphSeatings(), j.band(), j.errorDb(), halfDb);
  }

  private static Promise promise(int studies, UnaryOperator<Judgement> spoilt) {
    ProofPlan plan =
        ProofPlan.standard(studies, 5).withKinds(List.of(SimulatedKind.IN_EAR)).withSeatings(3);
    List<StudyTally> tallies = new ArrayList<>();
    for (int s = 0; s < studies; s++) {
      SimulatedStudy drawn = plan.simulation(8, s).draw();
      List<Judgement> judged =
          UnseenUnits.of(drawn, PredictionModel.OFFSET).judge(3).stream().map(spoilt).toList();
      tallies.add(new StudyTally(StudyTally.sums(judged), StudyTally.sums(judged)));
    }
    return Promise.judged(
        new Gathering(8, tallies).rows(SimulatedKind.IN_EAR.label(), 3), PredictionModel.OFFSET);
  }

  @Test
  void oldGraphsOfOneSeatingGetWiderIntervals() {
    SimulatedStudy drawn = SMALL.simulation(6, 0).draw();
    UnseenUnits unseen = UnseenUnits.of(drawn, PredictionModel.OFFSET);
    List<Judgement> two = unseen.judge(2);
    List<Judgement> one = unseen.judge(1);
    assertEquals(two.size(), one.size());
    int changed = 0;
    for (int k = 0; k < two.size(); k++) {
      assertTrue(one.get(k).halfDb() > two.get(k).halfDb());
      changed += one.get(k).errorDb() == two.get(k).errorDb() ? 0 : 1;
    }
    assertTrue(changed > two.size() * 0.9, "one seating is another graph than the mean of two");
  }

  @Test
  void aPlanRefusesWhatCannotBeTried() {
    assertRefused("studies must be 2 or more, but is 1", () -> ProofPlan.standard(1, 1));
    assertRefused("units must be 3 or more, but is 2", () -> SMALL.withUnitsPerKind(List.of(8, 2)));
    assertRefused(
        "each number of units must be named, and once",
        () -> SMALL.withUnitsPerKind(List.of(8, 8)));
    assertRefused(
        "each number of units must be named, and once", () -> SMALL.withUnitsPerKind(List.of()));
    assertRefused("each kind must be named, and once", () -> SMALL.withKinds(List.of()));
    assertRefused(
        "each kind must be named, and once",
        () -> SMALL.withKinds(List.of(SimulatedKind.IN_EAR, SimulatedKind.IN_EAR)));
    assertRefused("seatings and unseen units must be 1 or more", () -> SMALL.withSeatings(0));
    assertEquals(List.of(1), SMALL.withSeatings(1).graphSeatings());
    assertEquals(List.of(3), SMALL.withUnitsPerKind(List.of(3)).unitsPerKind());
  }

  private static void assertRefused(
      String message, org.junit.jupiter.api.function.Executable plan) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, plan).getMessage());
  }
}
