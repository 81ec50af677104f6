package org.twinrig.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.evidence.Region;
import org.twinrig.proof.Figure;
import org.twinrig.proof.ProofOutcome;
import org.twinrig.proof.ProofPlan;
import org.twinrig.proof.ProofRow;
import org.twinrig.proof.Span;
import org.twinrig.simulation.SimulatedKind;

/** What a proof prints, word for word, from rows made by hand. */
class ProofWordsTest {
  private static ProofRow row(Span span, double offset, double tried) {
    return new ProofRow(
        new ProofRow.Place(8, "in-ear", 1, span),
        60,
        9600,
        new ProofRow.ByModel(new Figure(2.5, 0.0312), new Figure(offset, 0.0101), 0.01, 5.25),
        new ProofRow.ByModel(new Figure(1.25, 0.02), new Figure(tried, 0.004), 0.01, 2.6),
        new Figure(0.5, 0.01));
  }

  private static ProofOutcome outcome(int studies) {
    List<ProofRow> rows = new ArrayList<>();
    rows.add(row(Span.of(Region.BASS), 0.8999, 0.9004));
    rows.add(row(Span.of(Region.TOP), 0.8, 0.95));
    rows.add(row(Span.ALL_BANDS, 0.9702, 0.9300));
    rows.add(row(Span.MEAN_OF_REGIONS, 0.2, 0.2));
    ProofPlan plan =
        ProofPlan.standard(studies, 4)
            .withUnitsPerKind(List.of(8))
            .withKinds(List.of(SimulatedKind.IN_EAR))
            .withSeatings(1);
    return new ProofOutcome(plan, 0.95, rows);
  }

  @Test
  void tableAndSentences() {
    assertEquals(
        """

        8 units of each kind in the study, old graphs of 1 seating, 60 studies
        kind             region              offset rms dB      auto rms dB      auto/offset    offset in %      auto in %  half-widths dB
        in-ear           bass                2.500 ± 0.031    1.250 ± 0.020    0.500 ± 0.010     90.0 ± 1.0     90.0 ± 0.4      5.25, 2.60
        in-ear           top                 2.500 ± 0.031    1.250 ± 0.020    0.500 ± 0.010     80.0 ± 1.0     95.0 ± 0.4      5.25, 2.60
        in-ear           all bands           2.500 ± 0.031    1.250 ± 0.020    0.500 ± 0.010     97.0 ± 1.0     93.0 ± 0.4      5.25, 2.60
        in-ear           mean of regions     2.500 ± 0.031    1.250 ± 0.020    0.500 ± 0.010     20.0 ± 1.0     20.0 ± 0.4      5.25, 2.60

        ± is one Monte Carlo standard error between studies; `in` is how often unseen units lie inside their prediction interval.
        The promise of a 95 % prediction interval: unseen units lie inside it 93 to 97 % of the time averaged over the bands, and no less than 90 % in any region, for every number of units, kind and sort of old graph.
        The model `offset` breaks it in 3 rows: stated 95 %, averaged over the bands 97.1 to 97.1 %, least in any region 80.0 ± 1.0 % (8 units, in-ear, old graphs of 1 seating, top).
          8 units, in-ear, old graphs of 1 seating, bass: 89.9 ± 1.0 %, but at least 90 % is promised (within two standard errors: more studies must tell).
          8 units, in-ear, old graphs of 1 seating, top: 80.0 ± 1.0 %, but at least 90 % is promised.
          8 units, in-ear, old graphs of 1 seating, all bands: 97.1 ± 1.0 %, but at most 97 % is promised (within two standard errors: more studies must tell).
        The model `auto` keeps it in every row: stated 95 %, averaged over the bands 93.0 to 93.0 %, least in any region 90.0 ± 0.4 % (8 units, in-ear, old graphs of 1 seating, bass)."""
            .replace("\r\n", "\n"),
        String.join("\n", new ProofWords(outcome(60)).lines()));
  }

  @Test
  void withFewStudiesNothingIsSettled() {
    List<String> lines = new ProofWords(outcome(19)).lines();
    assertEquals(
        "With 19 studies nothing is settled: the standard errors need 20 or more.", lines.get(9));
    assertEquals(
        lines.size() - 1, new ProofWords(outcome(20)).lines().size(), "20 studies need no warning");
  }
}
