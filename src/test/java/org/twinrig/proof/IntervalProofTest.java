package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.twinrig.proof.UnseenUnits.Judgement;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PredictionModel;

/** The proof on few real studies: what it must not depend on, and what it must catch. */
class IntervalProofTest {
  private static IntervalProof small(int seatings, Integer... unitsPerKind) {
    return new IntervalProof(
        List.of(unitsPerKind),
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.IN_EAR),
        seatings,
        4,
        PredictionModel.AVERAGE);
  }

  private static String csv(IntervalProof proof, int threads) {
    return proof.table().csv(proof.rows(Small.harness(3, 11, threads)));
  }

  @Test
  void figuresDependNeitherOnThreadsNorOnWhatElseIsTried() {
    String one = csv(small(2, 6), 1);
    assertEquals(one, csv(small(2, 6), 2));
    String more = csv(small(2, 5, 6), 2);
    assertEquals(2 * rows(one).size(), rows(more).size());
    assertEquals(rows(one), rows(more).subList(rows(one).size(), 2 * rows(one).size()));
  }

  private static List<String> rows(String csv) {
    return csv.lines().skip(1).toList();
  }

  @Test
  void everyBandOfEveryUnseenUnitIsJudgedOnce() {
    List<IntervalProof.Row> rows = small(2, 6).rows(Small.harness(3, 11, 2));
    // 2 sorts of old graph, 2 kinds, 4 regions and 2 summaries.
    assertEquals(2 * 2 * 6, rows.size());
    for (IntervalProof.Row row : rows) {
      if (row.span().equals(IntervalProof.ALL_BANDS)) {
        // 3 studies, 4 unseen units, 120 bands from 20 Hz to below 20 kHz.
        assertEquals(3 * 4 * 120, row.judgements());
      }
    }
  }

  @Test
  void intervalsOfHalfTheWidthAreCaught() {
    List<IntervalProof.Row> halved = rows(12, j -> withHalf(j, j.halfDb() / 2));
    assertTrue(averaged(halved) < 0.85);
    assertTrue(
        broken(halved).stream()
            .anyMatch(b -> b.contains("at least") && !b.contains("more studies")),
        () -> broken(halved).toString());
  }

  @Test
  void intervalsOfFourTimesTheWidthAreCaught() {
    List<IntervalProof.Row> wide = rows(4, j -> withHalf(j, j.halfDb() * 4));
    assertTrue(broken(wide).stream().anyMatch(b -> b.contains("at most")), wide::toString);
  }

  /** A systematic error of the transfer, such as a wrong anchor, must show as well. */
  @Test
  void aTransferThatIsOffIsCaught() {
    List<IntervalProof.Row> off =
        rows(
            4,
            j ->
                new Judgement(
                    j.kind(), j.graphSeatings(), j.region(), j.errorDb() + 2, j.halfDb()));
    double leastRegion =
        off.stream().limit(4).mapToDouble(r -> r.offset().coverage().value()).min().orElseThrow();
    assertTrue(leastRegion < 0.3, off::toString);
  }

  private static Judgement withHalf(Judgement j, double halfDb) {
    return new Judgement(j.kind(), j.graphSeatings(), j.region(), j.errorDb(), halfDb);
  }

  private static double averaged(List<IntervalProof.Row> rows) {
    return rows.stream()
        .filter(r -> r.span().equals(IntervalProof.ALL_BANDS))
        .mapToDouble(r -> r.offset().coverage().value())
        .findFirst()
        .orElseThrow();
  }

  private static List<String> broken(List<IntervalProof.Row> rows) {
    return rows.stream().flatMap(r -> small(3, 8).broken(r).stream()).toList();
  }

  private static List<IntervalProof.Row> rows(int studies, UnaryOperator<Judgement> spoilt) {
    IntervalProof proof =
        new IntervalProof(List.of(8), List.of(SimulatedKind.IN_EAR), 3, 4, PredictionModel.AVERAGE);
    Harness harness = Small.harness(studies, 5, 1);
    List<IntervalProof.Judged> judged =
        harness.each(
            "spoilt",
            study -> {
              List<Judgement> offset =
                  UnseenUnits.of(proof.draw(harness, 8, study), PredictionModel.OFFSET)
                      .judge(3)
                      .stream()
                      .map(spoilt)
                      .toList();
              return new IntervalProof.Judged(offset, offset);
            });
    return IntervalProof.rows(8, SimulatedKind.IN_EAR.label(), 3, judged);
  }

  @Test
  void oldGraphsOfOneSeatingGetWiderIntervals() {
    SimulatedStudy drawn = small(2, 6).draw(Small.harness(3, 11, 1), 6, 0);
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
    assertEquals(List.of(1), small(1, 6).graphSeatings());
  }
}
