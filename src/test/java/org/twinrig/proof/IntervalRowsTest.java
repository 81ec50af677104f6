package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.twinrig.evidence.Region;
import org.twinrig.proof.IntervalProof.Judged;
import org.twinrig.proof.IntervalProof.Row;
import org.twinrig.proof.UnseenUnits.Judgement;
import org.twinrig.regression.LeaveOneUnitOut;
import org.twinrig.regression.StudentT;
import org.twinrig.study.PredictionModel;

/** Rows from judgements made by hand, and from differences whose distribution is known. */
class IntervalRowsTest {
  private static final String KIND = "in-ear";

  /** Study one: errors 3 and 1 dB in the bass, 1 dB elsewhere; study two: 1 dB everywhere. */
  private static List<Judged> byHand() {
    return List.of(
        new Judged(errors(2, new double[] {3, 1}, 1), errors(2, new double[] {1, 1}, 1)),
        new Judged(errors(2, new double[] {1, 1}, 1), errors(4, new double[] {1, 1}, 1)));
  }

  private static List<Judgement> errors(double halfDb, double[] bassDb, double elsewhereDb) {
    List<Judgement> all = new ArrayList<>();
    for (double e : bassDb) {
      all.add(new Judgement(KIND, 5, Region.BASS, e, halfDb));
    }
    for (Region region : List.of(Region.MIDDLE, Region.RESONANCES, Region.TOP)) {
      all.add(new Judgement(KIND, 5, region, -elsewhereDb, halfDb));
    }
    return all;
  }

  private static Row row(String span) {
    return IntervalProof.rows(8, KIND, 5, byHand()).stream()
        .filter(r -> r.span().equals(span))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aRegionCountsItsOwnBands() {
    Row bass = row("bass");
    assertEquals(8, bass.units());
    assertEquals(KIND, bass.kind());
    assertEquals(5, bass.graphSeatings());
    assertEquals(2, bass.studies());
    assertEquals(4, bass.judgements());
    // √((9+1+1+1)/4) = √3; per study 5 and 1, so the mean square errs by 2, its root by 2/(2√3).
    assertEquals(Math.sqrt(3), bass.offset().rmsDb().value(), 1e-12);
    assertEquals(1 / Math.sqrt(3), bass.offset().rmsDb().se(), 1e-12);
    // Three of four inside; per study 1/2 and 1.
    assertEquals(0.75, bass.offset().coverage().value(), 1e-12);
    assertEquals(0.25, bass.offset().coverage().se(), 1e-12);
    assertEquals(2, bass.offset().halfDb().value(), 1e-12);
    assertEquals(0, bass.offset().below().value());
    assertEquals(1, bass.tried().rmsDb().value(), 1e-12);
    assertEquals(1, bass.tried().coverage().value());
    assertEquals(0, bass.tried().coverage().se());
    assertEquals(3, bass.tried().halfDb().value(), 1e-12);
    // Ratio 1/√3; its error is that of the offset alone, over the offset: (1/√3)·(1/√3)/√3.
    Clustered ratio = bass.tried().rmsDb().over(bass.offset().rmsDb());
    assertEquals(1 / Math.sqrt(3), ratio.value(), 1e-12);
    assertEquals(1 / (3 * Math.sqrt(3)), ratio.se(), 1e-12);
  }

  @Test
  void allBandsCountBandsAndTheMeanOfRegionsCountsRegions() {
    Row all = row(IntervalProof.ALL_BANDS);
    assertEquals(10, all.judgements());
    assertEquals(Math.sqrt(18.0 / 10), all.offset().rmsDb().value(), 1e-12);
    assertEquals(0.9, all.offset().coverage().value(), 1e-12);
    Row mean = row(IntervalProof.MEAN_OF_REGIONS);
    assertEquals(10, mean.judgements());
    assertEquals((Math.sqrt(3) + 3) / 4, mean.offset().rmsDb().value(), 1e-12);
    assertEquals((0.75 + 3) / 4, mean.offset().coverage().value(), 1e-12);
    assertEquals(0.25 / 4, mean.offset().coverage().se(), 1e-12);
  }

  @Test
  void aBoundThatIsMetIsNoBreachAndOneThatIsNotIs() {
    IntervalProof proof = IntervalProof.of(PredictionModel.AVERAGE, 8);
    // 0.75 ± 0.25 does not exclude 0.90.
    assertEquals(
        List.of(
            "offset: 75.0 ± 25.0 % inside, but at least 90 % is promised (within two standard"
                + " errors: more studies must tell)"),
        proof.broken(row("bass")));
    assertEquals(
        List.of(
            "offset: 90.0 ± 10.0 % inside, but at least 93 % is promised (within two standard"
                + " errors: more studies must tell)",
            "average: 100.0 ± 0.0 % inside, but at most 97 % is promised"),
        proof.broken(row(IntervalProof.ALL_BANDS)));
    for (String kept : List.of("middle", "resonances", "top", IntervalProof.MEAN_OF_REGIONS)) {
      assertEquals(List.of(), proof.broken(row(kept)));
    }
    Clustered exactly = Clustered.ratio(new double[] {93, 93}, new double[] {100, 100});
    assertTrue(IntervalProof.brokenBound(IntervalProof.ALL_BANDS, exactly).isEmpty());
  }

  /** What is printed stands on the same side of the bound as what is meant. */
  @Test
  void aShareNearItsBoundIsNotRoundedOntoIt() {
    Clustered share = Clustered.ratio(new double[] {8999, 8999}, new double[] {10_000, 10_000});
    assertEquals(
        "89.9 ± 0.0 % inside, but at least 90 % is promised", IntervalProof.sentence(share, 0.90));
    Clustered large = Clustered.ratio(new double[] {9702, 9702}, new double[] {10_000, 10_000});
    assertEquals(
        "97.1 ± 0.0 % inside, but at most 97 % is promised", IntervalProof.sentence(large, 0.97));
  }

  @Test
  void anErrorAsLargeAsTheHalfWidthIsInside() {
    assertTrue(judgement(-2).inside());
    assertFalse(judgement(Math.nextUp(2.0)).inside());
    assertFalse(judgement(-2).below());
    assertFalse(judgement(3).below());
    assertTrue(judgement(-3).below());
    List<Judgement> three = List.of(judgement(-3), judgement(3), judgement(0));
    Judged study = new Judged(three, three); // twice, as an error between studies needs two of them
    Row row = IntervalProof.rows(8, KIND, 5, joined(List.of(study, study), byHand())).get(0);
    assertEquals(6 + 4, row.judgements());
    assertEquals(Math.sqrt((2 * 18 + 12) / 10.0), row.offset().rmsDb().value(), 1e-12);
    assertEquals((2 * 1 + 3) / 10.0, row.offset().coverage().value(), 1e-12);
    assertEquals(2 * 1 / 10.0, row.offset().below().value(), 1e-12);
  }

  private static Judgement judgement(double errorDb) {
    return new Judgement(KIND, 5, Region.BASS, errorDb, 2);
  }

  private static List<Judged> joined(List<Judged> some, List<Judged> more) {
    List<Judged> all = new ArrayList<>(some);
    all.addAll(more);
    return all;
  }

  @Test
  void modelsTriedOnDifferentBandsAreNotCompared() {
    List<Judgement> some = byHand().get(0).offset();
    assertThrows(IllegalStateException.class, () -> new Judged(some, List.of()));
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
    List<Judged> judged = new ArrayList<>();
    for (int s = 0; s < studies; s++) {
      List<Judgement> judgements = new ArrayList<>();
      for (Region region : Region.values()) {
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
        judgements.add(new Judgement(KIND, 5, region, unseen - mean, half));
      }
      judged.add(new Judged(judgements, judgements));
    }
    Clustered coverage = IntervalProof.rows(8, KIND, 5, judged).get(4).offset().coverage();
    double binomial = Math.sqrt(EXACT * (1 - EXACT) / (4 * studies));
    assertEquals(EXACT, coverage.value(), 4 * binomial);
    assertEquals(binomial, coverage.se(), 0.05 * binomial);
  }

  private static final double EXACT = 0.951356;

  /** Box and Muller 1958. */
  private static double normal(double u, double v) {
    return Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v);
  }
}
