package org.twinrig.workbench;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Problem;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;

/**
 * The study as it stands after a change. Never changed itself: whoever reads a leaf sees one state,
 * whatever happens meanwhile.
 *
 * @param revision counts the changes, from 1
 * @param what was done to come here, as a sentence
 * @param study what the lab declares
 * @param outcome what the study found; nothing when it cannot be estimated
 * @param before what it found before the change
 * @param undo what the next undo takes back
 * @param problems what was wrong with files, and why there is no outcome
 */
record Leaf(
    long revision,
    String what,
    Study study,
    InputFingerprint fingerprint,
    Optional<StudyOutcome> outcome,
    Optional<StudyOutcome> before,
    Optional<String> undo,
    List<Problem> problems) {

  Leaf {
    problems = List.copyOf(problems);
  }
}
