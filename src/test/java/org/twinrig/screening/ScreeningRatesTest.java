package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often captures without a fault are accused, and lost seals found, on simulated studies. What
 * was measured stands beside every bound; the bounds leave room for chance.
 */
class ScreeningRatesTest {
  /**
   * Measured on 2100, 1290 and 396 captures: lost seal 0.5, 1.3 and 1.3 %, odd seating 0.4, 0.9 and
   * 0 %, level jump 0.1, 0 and 0.5 %, all else less. Over 100 studies of four seatings, lost seals
   * are accused in 0.0 to 0.9 % of the sound captures of a kind (studies/seal-proof).
   */
  @ParameterizedTest
  @CsvSource({"3, 5, 12, 41", "3, 3, 12, 71", "2, 2, 8, 71"})
  void capturesWithoutAFaultAreSeldomAccused(
      int studies, int seatings, int units, long seed, TestReporter reporter) {
    Map<Finding, Integer> accused = new TreeMap<>();
    int captures = 0;
    for (SimulatedScreening study : SimulatedScreening.drawn(studies, seatings, units, seed)) {
      Screening screening = study.screen();
      captures += study.captures().size();
      screening.verdicts().forEach(v -> accused.merge(v.finding(), 1, Integer::sum));
    }
    reporter.publishEntry("accused of " + captures, accused.toString());
    for (Map.Entry<Finding, Integer> e : accused.entrySet()) {
      assertTrue(e.getValue() <= 0.016 * captures, accused + " of " + captures);
    }
  }

  /**
   * Lost seals where a good seating stands beside them: without one there is no yardstick. In the
   * last row nine of ten first seatings on the head, and half of all others, have lost theirs. Open
   * over-ears and on-ears, whose seal hardly decides or is never good, are found less often: over
   * eight studies a row open over-ears in 81, 62 and 60 %, on-ears in 96, 78 and 93 % of the cases,
   * the others in 96 % or more. The bounds for the first two leave room for three small studies.
   */
  @ParameterizedTest
  @CsvSource({"5, 0.2, 0.03, 0.7, 0.9", "2, 0.2, 0.05, 0.35, 0.8", "5, 0.9, 0.55, 0.5, 0.8"})
  void lostSealsAreFound(
      int seatings, double first, double later, double open, double onEar, TestReporter reporter) {
    Map<String, SealTruth.Count> counts = new TreeMap<>();
    for (int s = 0; s < 3; s++) {
      SealTruth.drawn(seatings, first, later, 300 + s).count(counts);
    }
    reporter.publishEntry("lost seals", counts.toString());
    Map<String, Double> least =
        Map.of("closed over-ear", 0.95, "in-ear", 0.95, "on-ear", onEar, "open over-ear", open);
    counts.forEach((kind, c) -> assertTrue(c.found >= least.get(kind) * c.lost, kind + ": " + c));
    int good = counts.values().stream().mapToInt(c -> c.good).sum();
    int accused = counts.values().stream().mapToInt(c -> c.accused).sum();
    assertTrue(accused <= 0.012 * good, accused + " of " + good);
  }
}
