package org.twinrig.report.html;

import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.figure.StudyDrawings.Sort;

/**
 * What supports a study, as the templates see it.
 *
 * @param equivalence where the mean difference is shown to make none
 * @param validation how units fared that a rule never saw
 * @param ranks whether units keep their rank
 * @param features what units share
 * @param resonancePlates where resonances sit on either fixture
 */
public record EvidenceView(
    Equivalence equivalence,
    Validation validation,
    Ranks ranks,
    Features features,
    List<Plate> resonancePlates) {

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

  /**
   * How units fared that a rule never saw.
   *
   * @param worst the unit that was missed most, by kind and region
   * @param howToRead what coverage counts
   * @param coverage stated against reached, one row per kind
   * @param plates drawings
   * @param heldOutWords what became of the units the lab held out
   * @param heldOut their errors
   */
  public record Validation(
      Sheet worst,
      String howToRead,
      Sheet coverage,
      List<Plate> plates,
      List<String> heldOutWords,
      Sheet heldOut) {}

  /**
   * Whether units keep their rank.
   *
   * @param howToRead what that means
   * @param sheet one row per kind; none without reference curves
   * @param plates drawings
   */
  public record Ranks(String howToRead, Sheet sheet, List<Plate> plates) {}

  static EvidenceView of(StudyOutcome outcome, StudyDrawings drawings) {
    return new EvidenceView(
        new Equivalence(
            EquivalenceSheet.howToRead(outcome),
            EquivalenceSheet.sentences(outcome),
            EquivalenceSheet.of(outcome)),
        new Validation(
            ValidationSheet.worst(outcome),
            ValidationSheet.howToRead(outcome),
            ValidationSheet.coverage(outcome),
            Plate.of(drawings.of(Sort.CALIBRATION)),
            ValidationSheet.heldOutWords(outcome),
            ValidationSheet.heldOut(outcome)),
        new Ranks(RankSheet.howToRead(), RankSheet.of(outcome), Plate.of(drawings.of(Sort.RANK))),
        new Features(
            FeatureSheet.howToRead(outcome),
            FeatureSheet.of(outcome),
            Plate.of(drawings.of(Sort.FEATURE))),
        Plate.of(drawings.of(Sort.RESONANCE)));
  }
}
