package org.twinrig.analysis;

import org.twinrig.evidence.Equivalence;
import org.twinrig.regression.KindEstimate;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * Whether the study of one kind supports its use, and what the fixtures have to do with it.
 *
 * @param equivalence where the mean transfer is shown to make no difference
 * @param features what the units share, in the transfer and on either fixture
 */
public record KindEvidence(Equivalence equivalence, FixtureFeatures.Result features) {

  static KindEvidence of(PairedUnits paired, KindEstimate estimate, Settings settings) {
    return new KindEvidence(
        Equivalence.of(estimate, settings.tolerance().equivalenceDb(), settings.confidence()),
        FixtureFeatures.withDefaults()
            .withConfidence(settings.confidence())
            .withSeed(settings.seed())
            .of(paired));
  }
}
