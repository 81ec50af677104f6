package org.twinrig.analysis;

import java.util.List;
import org.twinrig.problem.Problem;
import org.twinrig.screening.Screening;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * Everything a study found.
 *
 * @param study what the lab declared
 * @param fingerprint of the study's inputs
 * @param captures every capture that could be used, whether it counted or not
 * @param screening which of them counted, and what was found
 * @param kinds one outcome per kind that has units on both fixtures
 * @param problems what was wrong with captures, found on this way
 */
public record StudyOutcome(
    Study study,
    String fingerprint,
    List<AnchoredCapture> captures,
    Screening screening,
    List<KindOutcome> kinds,
    List<Problem> problems) {

  /** Copies the lists. */
  public StudyOutcome {
    captures = List.copyOf(captures);
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
  }

  /**
   * All that is needed to re-express graphs.
   *
   * @return the transfer functions with their marks
   */
  public Translation translation() {
    return translation(study, fingerprint, kinds.stream().map(KindOutcome::transfer).toList());
  }

  static Translation translation(Study study, String fingerprint, List<TransferFunction> kinds) {
    return new Translation(
        new Translation.Origin(
            study.title(),
            study.from().label(),
            study.to().label(),
            study.settings().anchor().words(),
            fingerprint),
        study.settings().anchor(),
        study.settings().grid(),
        study.settings().confidence(),
        study.settings().tolerance(),
        study.settings().minUnits(),
        kinds);
  }
}
