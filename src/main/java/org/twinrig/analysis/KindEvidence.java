package org.twinrig.analysis;

import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * Whether the study of one kind supports its use, and what the fixtures have to do with it.
 *
 * @param features what the units share, in the transfer and on either fixture
 */
public record KindEvidence(FixtureFeatures.Result features) {

  static KindEvidence of(PairedUnits paired, Settings settings) {
    return new KindEvidence(
        FixtureFeatures.withDefaults()
            .withConfidence(settings.confidence())
            .withSeed(settings.seed())
            .of(paired));
  }
}
