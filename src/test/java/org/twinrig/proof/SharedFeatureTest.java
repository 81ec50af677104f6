package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;

/**
 * A few simulated studies of 12 units, as a first sign: the promise itself is read from the
 * committed table, see {@link PublishedFeaturesTest}.
 */
class SharedFeatureTest {
  private static final int STUDIES = 12;

  private static final FeatureProof PROOF =
      new FeatureProof(
          List.of(12), List.of(FixturePair.ALIKE), List.of(SimulatedKind.OPEN_OVER_EAR), 5);

  /** The place is where the simulated fixture has its resonance. */
  @ParameterizedTest
  @CsvSource({"PEAK_ON_NEW, 8000", "NOTCH_ON_OLD, 9000"})
  void aPlantedFeatureIsFoundInItsPlace(FixturePair fixtures, double placeHz) {
    int found = 0;
    for (int study = 0; study < STUDIES; study++) {
      found +=
          features(fixtures, study).stream()
                  .anyMatch(
                      f ->
                          f.height().value() > 0
                              && Math.abs(Math.log(f.centre().value() / placeHz))
                                  <= Math.log(2) / 12)
              ? 1
              : 0;
    }
    assertEquals(STUDIES, found);
  }

  /**
   * Where 5 % of studies may claim something, 3 of 12 or more do so once in 50 (binomial: 0.0196);
   * the seed is fixed.
   */
  @Test
  void fixturesThatAreAlikeShareNothing() {
    long claiming = 0;
    for (int study = 0; study < STUDIES; study++) {
      claiming += features(FixturePair.ALIKE, study).isEmpty() ? 0 : 1;
    }
    assertTrue(claiming <= 2, claiming + " studies claim a feature that is not there");
  }

  private static List<FixtureFeature> features(FixturePair fixtures, int study) {
    Harness there = Small.harness(STUDIES, 7, 1).in(Situation.on(fixtures));
    return FeatureProof.features(PROOF.draw(there, 12, study))
        .get(SimulatedKind.OPEN_OVER_EAR.label());
  }

  @Test
  void fixturesThatAreAlikeGiveATableWithoutAPlace() {
    FeatureProof proof =
        new FeatureProof(
            List.of(6), List.of(FixturePair.ALIKE), List.of(SimulatedKind.values()), 2);
    String csv = proof.table().csv(proof.rows(Small.harness(3, 2, 2)));
    List<String> lines = csv.lines().toList();
    assertEquals(
        "units,fixtures,kind,studies,clean,clean_low,clean_high,claims_per_study,place_hz,height_db,"
            + "found,found_low,found_high,centre_held,height_held",
        lines.get(0));
    assertEquals(5, lines.size());
    assertTrue(lines.get(1).matches("6,alike,open over-ear,3,[01]\\.\\d+,.*,,,,,,,"), lines.get(1));
    assertEquals(csv, proof.table().csv(proof.rows(Small.harness(3, 2, 1))));
  }
}
