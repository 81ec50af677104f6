package org.twinrig.analysis;

import java.util.List;
import org.twinrig.evidence.Equivalence;
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
 * @param features what the units share, in the transfer and on either fixture
 */
public record KindEvidence(
    Equivalence equivalence,
    Validation leftOut,
    Validation heldOut,
    FixtureFeatures.Result features) {

  /**
   * Gathers the evidence of one kind.
   *
   * @param paired its units
   * @param estimate what was made of them
   * @param heldOut trials on units kept out of it
   * @param settings of the study
   */
  static KindEvidence of(
      PairedUnits paired, KindEstimate estimate, List<Trial> heldOut, Settings settings) {
    double confidence = settings.confidence();
    return new KindEvidence(
        Equivalence.of(estimate, settings.tolerance().equivalenceDb(), confidence),
        Validation.of(paired.grid(), Trial.leftOut(estimate), confidence),
        Validation.of(paired.grid(), heldOut, confidence),
        FixtureFeatures.withDefaults()
            .withConfidence(confidence)
            .withSeed(settings.seed())
            .of(paired));
  }
}
