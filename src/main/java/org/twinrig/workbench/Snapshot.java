package org.twinrig.workbench;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;

/**
 * The study as it stands after a change. Never changed itself: whoever reads a snapshot sees one
 * state, whatever happens meanwhile.
 *
 * @param revision counts the changes, from 1
 * @param what was done to come here, as a sentence
 * @param outcome what the study found; nothing when it cannot be estimated
 * @param undo what the next undo takes back
 * @param problems what was wrong with files, and why there is no outcome
 */
public record Snapshot(
    long revision,
    String what,
    Study study,
    InputFingerprint fingerprint,
    Optional<StudyOutcome> outcome,
    Optional<StudyOutcome> before,
    Optional<String> undo,
    List<Problem> problems) {

  public Snapshot {
    problems = List.copyOf(problems);
  }

  /** What the study found; where it cannot be estimated, why not. */
  StudyOutcome estimated() throws UnusableInput {
    return outcome.orElseThrow(() -> new UnusableInput(problems));
  }

  /** Every kind that was estimated; none where the study cannot be. */
  public List<KindOutcome> kinds() {
    return outcome.map(StudyOutcome::kinds).orElse(List.of());
  }

  /** A unit's captures on a fixture, in the order of the table. */
  public List<CaptureEntry> captures(String unit, String fixture) {
    return study.captures().stream()
        .filter(c -> c.unit().equals(unit) && c.fixture().equals(fixture))
        .toList();
  }

  /** The doubts about the study, open and answered, by their causes. */
  public List<Cause> causes() {
    return outcome.map(o -> Cause.of(o.doubts())).orElse(List.of());
  }
}
