package org.twinrig.report.html;

import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.report.figure.EvidenceDrawings;

/**
 * What supports a study, as the templates see it.
 *
 * @param features what units share
 * @param resonancePlates where resonances sit on either fixture
 */
public record EvidenceView(Features features, List<Plate> resonancePlates) {

  /**
   * Features that units share.
   *
   * @param howToRead what they are
   * @param sheet one row per feature
   * @param plates drawings
   */
  public record Features(String howToRead, Sheet sheet, List<Plate> plates) {}

  static EvidenceView of(StudyOutcome outcome, EvidenceDrawings drawings) {
    return new EvidenceView(
        new Features(
            FeatureSheet.howToRead(outcome),
            FeatureSheet.of(outcome),
            Plate.of(drawings.features())),
        Plate.of(drawings.resonances()));
  }
}
