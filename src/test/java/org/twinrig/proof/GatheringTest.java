package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.twinrig.band.Band;
import org.twinrig.evidence.Region;
import org.twinrig.regression.LeaveOneUnitOut;
import org.twinrig.regression.StudentT;
import org.twinrig.study.PredictionModel;

/** Rows from judgements made by hand, and from differences whose distribution is known. */
class GatheringTest {
  private static final String KIND = "in-ear";
  private static final List<Band> ONE_BAND_PER_REGION =
      List.of(
          Band.ofMidFrequency(100, 12),
          Band.ofMidFrequency(1000, 12),
          Band.ofMidFrequency(5000, 12),
          Band.ofMidFrequency(15_000, 12));

  /** Study one: errors 3 and 1 dB in the bass, 1 dB elsewhere; study two: 1 dB everywhere. */
  private static List<StudyTally> byHand() {
    return List.of(
        new StudyTally(
            StudyTally.sums(errors(2, new double[] {3, 1}, 1)),
            StudyTally.sums(errors(2, new double[] {1, 1}, 1))),
        new StudyTally(
            StudyTally.sums(errors(2, new double[] {1, 1}, 1)),
            StudyTally.sums(errors(4, new double[] {1, 1}, 1))));
  }

  private static List<Judgement> errors(double halfDb, double[] bassDb, double elsewhereDb) {
    List<Judgement> all = new ArrayList<>();
    for (double e : bassDb) {
      all.add(new Judgement(KIND, 5, ONE_BAND_PER_REGION.get(0), e, halfDb));
    }
    for (int r = 1; r < ONE_BAND_PER_REGION.size(); r++) {
      all.add(new Judgement(KIND, 5, ONE_BAND_PER_REGION.get(r), -elsewhereDb, halfDb));
    }
    return all;
  }

  private static ProofRow row(Span span) {
    return new Gathering(8, byHand())
        .rows(KIND, 5).stream()
            .filter(r -> r.place().span().equals(span))
            .findFirst()
            .orElseThrow();
  }

  @Test
  void aRegionCountsItsOwnBands() {
    ProofRow bass = row(Span.of(Region.BASS));
    assertEquals(new ProofRow.Place(8, KIND, 5, Span.of(Region.BASS)), bass.place());
    assertEquals(2, bass.studies());
    assertEquals(4, bass.judgements());
    // √((9+1+1+1)/4) = √3; per study 5 and 1, so the mean square errs by 2, its root by 2/(2√3).
    assertEquals(Math.sqrt(3), bass.offset().rmsDb().value(), 1e-12);
    assertEquals(1 / Math.sqrt(3), bass.offset().rmsDb().monteCarloSe(), 1e-12);
    // Three of four inside; per study 1/2 and 1.
    assertEquals(0.75, bass.offset().coverage().value(), 1e-12);
    assertEquals(0.25, bass.offset().coverage().monteCarloSe(), 1e-12);
    assertEquals(2, bass.offset().meanHalfDb(), 1e-12);
    assertEquals(0, bass.offset().below());
    assertEquals(1, bass.tried().rmsDb().value(), 1e-12);
    assertEquals(new Figure(1, 0), bass.tried().coverage());
    assertEquals(3, bass.tried().meanHalfDb(), 1e-12);
    // Ratio 1/√3; its error is that of the offset alone, over the offset: (1/√3)·(1/√3)/√3.
    assertEquals(1 / Math.sqrt(3), bass.ratio().value(), 1e-12);
    assertEquals(1 / (3 * Math.sqrt(3)), bass.ratio().monteCarloSe(), 1e-12);
  }

  @Test
  void allBandsCountBandsAndTheMeanOfRegionsCountsRegions() {
    ProofRow all = row(Span.ALL_BANDS);
    assertEquals(10, all.judgements());
    assertEquals(Math.sqrt(18.0 / 10), all.offset().rmsDb().value(), 1e-12);
    assertEquals(0.9, all.offset().coverage().value(), 1e-12);
    ProofRow mean = row(Span.MEAN_OF_REGIONS);
    assertEquals(10, mean.judgements());
    assertEquals((Math.sqrt(3) + 3) / 4, mean.offset().rmsDb().value(), 1e-12);
    assertEquals((0.75 + 3) / 4, mean.offset().coverage().value(), 1e-12);
    assertEquals(0.25 / 4, mean.offset().coverage().monteCarloSe(), 1e-12);
  }

  @Test
  void aBoundThatIsMetIsNoBreachAndOneThatIsNotIs() {
    List<ProofRow> rows = new Gathering(8, byHand()).rows(KIND, 5);
    Promise offset = Promise.judged(rows, PredictionModel.OFFSET);
    assertFalse(offset.kept());
    assertEquals(Span.of(Region.BASS), offset.leastRegion().place().span());
    assertEquals(
        List.of(0.90, 0.93), offset.breaches().stream().map(Promise.Breach::bound).toList());
    assertTrue(offset.breaches().get(0).below());
    // 0.75 ± 0.25 does not exclude 0.90.
    assertTrue(offset.breaches().get(0).perhapsChance());
    Promise auto = Promise.judged(rows, PredictionModel.AUTO);
    assertEquals(List.of(0.97), auto.breaches().stream().map(Promise.Breach::bound).toList());
    assertFalse(auto.breaches().get(0).below());
    assertFalse(auto.breaches().get(0).perhapsChance());
  }

  @Test
  void anErrorAsLargeAsTheHalfWidthIsInside() {
    Band band = ONE_BAND_PER_REGION.get(0);
    assertTrue(new Judgement(KIND, 5, band, -2, 2).inside());
    assertFalse(new Judgement(KIND, 5, band, Math.nextUp(2.0), 2).inside());
    assertFalse(new Judgement(KIND, 5, band, -2, 2).below());
    assertFalse(new Judgement(KIND, 5, band, 3, 2).below());
    assertTrue(new Judgement(KIND, 5, band, -3, 2).below());
    List<Judgement> three =
        List.of(
            new Judgement(KIND, 5, band, -3, 2),
            new Judgement(KIND, 5, band, 3, 2),
            new Judgement(KIND, 5, band, 0, 2));
    assertEquals(
        new StudyTally.Sums(3, 18, 1, 1, 6),
        StudyTally.sums(three).get(new StudyTally.Cell(KIND, 5, Region.BASS)));
  }

  @Test
  void modelsTriedOnDifferentBandsAreNotCompared() {
    Map<StudyTally.Cell, StudyTally.Sums> some = byHand().get(0).offset();
    Gathering uneven = new Gathering(8, List.of(new StudyTally(some, Map.of())));
    assertThrows(IllegalStateException.class, () -> uneven.rows(KIND, 5));
  }

  /**
   * Independent normal differences of 8 units: half = t·√mean(r²) with r from leaving one out holds
   * a ninth unit with probability P(|T₇| ≤ t·√(n²/(n²-1))), exactly. R 4.2.2: {@code
   * 2*pt(qt(.975,7)*sqrt(64/63),7)-1} gives 0.951356. 4,000 studies; four standard errors, which
   * must themselves be the binomial ones.
   */
  @Test
  void normalDifferencesAreCoveredAsTheTheorySays() {
    SplittableRandom random = new SplittableRandom(7);
    int studies = 4000;
    List<StudyTally> tallies = new ArrayList<>();
    for (int s = 0; s < studies; s++) {
      List<Judgement> judgements = new ArrayList<>();
      for (Band band : ONE_BAND_PER_REGION) {
        double[] d = random.doubles(16).toArray();
        double[] units = new double[8];
        double mean = 0;
        for (int i = 0; i < 8; i++) {
          units[i] = normal(d[2 * i], d[2 * i + 1]);
          mean += units[i] / 8;
        }
        double half =
            StudentT.twoSided(0.95, 7) * LeaveOneUnitOut.rms(LeaveOneUnitOut.errors(units));
        double unseen = normal(random.nextDouble(), random.nextDouble());
        judgements.add(new Judgement(KIND, 5, band, unseen - mean, half));
      }
      Map<StudyTally.Cell, StudyTally.Sums> sums = StudyTally.sums(judgements);
      tallies.add(new StudyTally(sums, sums));
    }
    Figure coverage = new Gathering(8, tallies).rows(KIND, 5).get(4).offset().coverage();
    double binomial = Math.sqrt(EXACT * (1 - EXACT) / (4 * studies));
    assertEquals(EXACT, coverage.value(), 4 * binomial);
    assertEquals(binomial, coverage.monteCarloSe(), 0.05 * binomial);
  }

  private static final double EXACT = 0.951356;

  /** Box and Muller 1958. */
  private static double normal(double u, double v) {
    return Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v);
  }
}
