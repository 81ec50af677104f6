package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.problem.Problem;
import org.twinrig.study.DriftMode;
import org.twinrig.study.Study;

/**
 * What the check unit says about the sessions of a study. The old fixture comes first; the drift is
 * corrected when the lab asked for it.
 */
public record SessionReview(
    String unit, List<FixtureDrift> fixtures, Optional<DriftCorrection> correction) {

  public SessionReview {
    fixtures = List.copyOf(fixtures);
  }

  /**
   * Reviews the sessions of a study. Its captures are corrected for their calibrators and for
   * nothing else; with lost seals and copies the check unit is not looked at. Nothing when the
   * study names no check unit.
   */
  public static Optional<SessionReview> of(
      Study study, List<Capture> corrected, Screening screening) {
    return study.settings().checkUnit().map(u -> review(study, u, corrected, screening));
  }

  private static SessionReview review(
      Study study, String unit, List<Capture> corrected, Screening screening) {
    CheckCaptures captures = new CheckCaptures(study, corrected, screening.verdicts());
    List<FixtureDrift> fixtures = new ArrayList<>();
    List<DriftCorrection.OnFixture> corrections = new ArrayList<>();
    for (Fixture fixture : List.of(study.from(), study.to())) {
      List<CheckSession> seen = captures.on(fixture.name());
      fixtures.add(FixtureDrift.of(fixture.name(), fixture.label(), seen, study.sessions()));
      corrections.add(
          DriftCorrection.OnFixture.of(fixture.name(), seen, study.settings().anchor()));
    }
    return new SessionReview(
        unit,
        fixtures,
        study.settings().drift() == DriftMode.CORRECT
            ? Optional.of(new DriftCorrection(corrections))
            : Optional.empty());
  }

  /**
   * A verdict for every capture of a session out of control. None of them is left out for it:
   * whether a whole session is to be corrected, excluded or kept is the lab's to decide.
   */
  public List<Verdict> verdicts(List<CaptureEntry> captures) {
    List<Verdict> verdicts = new ArrayList<>();
    for (CaptureEntry entry : captures) {
      fixtures.stream()
          .filter(f -> f.fixture().equals(entry.fixture()) && !entry.excludedByLab())
          .flatMap(f -> f.outOfControl().stream())
          .filter(o -> o.session().equals(entry.session()))
          .map(
              o ->
                  Verdict.of(
                      entry,
                      Finding.DRIFTING_SESSION,
                      o.departureDb(),
                      o.limitDb(),
                      "in the " + o.worst().words()))
          .forEach(verdicts::add);
    }
    return verdicts;
  }

  /** Notes on sessions in which the check unit was not captured. */
  public List<Problem> notes() {
    return fixtures.stream()
        .filter(f -> !f.without().isEmpty())
        .map(
            f ->
                new Problem(
                    Problem.Kind.NOTE,
                    "study.yaml",
                    0,
                    ("the check unit `%s` has no capture that counts on `%s` in %s"
                            + " (or only of another side): %s")
                        .formatted(
                            unit,
                            f.fixture(),
                            String.join(", ", f.without()),
                            correction.isPresent()
                                ? "these sessions are not corrected for drift"
                                : "nothing is known of their drift"),
                    "capture it in every session, on the same side or sides"))
        .toList();
  }
}
