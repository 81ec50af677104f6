package org.twinrig.analysis;

import java.util.List;
import java.util.Optional;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Trial;
import org.twinrig.evidence.Validation;
import org.twinrig.regression.KindEstimate;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * Whether the study of one kind supports its use, and what the fixtures have to do with it.
 *
 * @param equivalence where the mean transfer is shown to make no difference
 * @param leftOut errors on the units of the study, each left out in turn
 * @param heldOut errors on units that the lab kept out of every fit
 * @param ranks whether units keep their rank; nothing without reference curves on both fixtures
 * @param features what the units share, in the transfer and on either fixture
 */
public record KindEvidence(
    Equivalence equivalence,
    Validation leftOut,
    Validation heldOut,
    Optional<RankKeeping.Result> ranks,
    FixtureFeatures.Result features) {

  /**
   * Gathers the evidence of one kind.
   *
   * @param paired its units
   * @param estimate what was made of them
   * @param heldOut trials on units kept out of it
   * @param references what units are compared with on either fixture
   * @param settings of the study
   */
  static KindEvidence of(
      PairedUnits paired,
      KindEstimate estimate,
      List<Trial> heldOut,
      Optional<RankKeeping.References> references,
      Settings settings) {
    double confidence = settings.confidence();
    return new KindEvidence(
        Equivalence.of(estimate, settings.tolerance().equivalenceDb(), confidence),
        Validation.of(paired.grid(), Trial.leftOut(estimate), confidence),
        Validation.of(paired.grid(), heldOut, confidence),
        references.map(r -> RankKeeping.withDefaults().withConfidence(confidence).of(paired, r)),
        FixtureFeatures.withDefaults()
            .withConfidence(confidence)
            .withSeed(settings.seed())
            .of(paired));
  }
}
