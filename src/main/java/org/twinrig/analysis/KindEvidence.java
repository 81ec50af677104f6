package org.twinrig.analysis;

import java.util.Optional;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Validation;
import org.twinrig.reliability.FixtureFeatures;

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
    FixtureFeatures.Result features) {}
