package org.twinrig.report.html;

import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.report.figure.EvidenceDrawings;

/**
 * What supports a study, as the templates see it.
 *
 * @param equivalence where the mean difference is shown to make none
 * @param features what units share
 * @param resonancePlates where resonances sit on either fixture
 */
public record EvidenceView(
    Equivalence equivalence, Features features, List<Plate> resonancePlates) {

  /**
   * Features that units share.
   *
   * @param howToRead what they are
   * @param sheet one row per feature
   * @param plates drawings
   */
  public record Features(String howToRead, Sheet sheet, List<Plate> plates) {}

  /**
   * Where the mean difference is shown to make none.
   *
   * @param howToRead what that means
   * @param sentences one per kind
   * @param sheet one row per kind
   */
  public record Equivalence(String howToRead, List<String> sentences, Sheet sheet) {}

  static EvidenceView of(StudyOutcome outcome, EvidenceDrawings drawings) {
    return new EvidenceView(
        new Equivalence(
            EquivalenceSheet.howToRead(outcome),
            outcome.kinds().stream()
                .map(k -> EquivalenceSheet.sentence(k.evidence().equivalence()))
                .toList(),
            EquivalenceSheet.of(outcome)),
        new Features(
            FeatureSheet.howToRead(outcome),
            FeatureSheet.of(outcome),
            Plate.of(drawings.features())),
        Plate.of(drawings.resonances()));
  }
}
