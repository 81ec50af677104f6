package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.Study;

/**
 * Captures corrected, anchored and screened.
 *
 * <p>The check unit can only be looked at once its captures are screened. Where its drift is to be
 * corrected, anchoring and screening are therefore done again on the corrected captures.
 *
 * @param anchored every capture that reaches the anchor
 * @param screening which of them count
 * @param review what the check unit says of the sessions, if there is one
 * @param problems what was wrong with captures and sessions
 */
record Preparation(
    List<AnchoredCapture> anchored,
    Screening screening,
    Optional<SessionReview> review,
    List<Problem> problems) {

  static Preparation of(Study study, List<Capture> read, Anchoring anchoring) {
    List<Capture> corrected = study.corrected(read);
    Findings<List<AnchoredCapture>> anchored = anchoring.apply(corrected);
    Screening screening = Screening.of(study, anchored.value());
    Optional<SessionReview> review = SessionReview.of(study, corrected, screening);
    if (review.flatMap(SessionReview::correction).isPresent()) {
      anchored = anchoring.apply(review.get().correction().orElseThrow().apply(corrected));
      screening = screening.again(study, anchored.value());
    }
    List<Problem> problems = new ArrayList<>(anchored.problems());
    review.ifPresent(r -> problems.addAll(r.notes()));
    Screening whole = screening;
    return new Preparation(
        anchored.value(),
        review.map(r -> whole.with(r.verdicts(study.captures()))).orElse(screening),
        review,
        problems);
  }
}
