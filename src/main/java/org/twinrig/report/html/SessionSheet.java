package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Session;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.CalibratorCheck;

/** The sessions: what the calibrator read, and what the check unit says. */
final class SessionSheet {
  private SessionSheet() {}

  static StudyView.Sessions view(StudyOutcome outcome) {
    return new StudyView.Sessions(
        SessionWords.howToRead(outcome), sheet(outcome), SessionWords.findings(outcome));
  }

  private static Sheet sheet(StudyOutcome outcome) {
    Optional<CalibratorCheck> check = CalibratorCheck.of(outcome.study().settings());
    List<Sheet.Column> columns =
        new ArrayList<>(
            List.of(
                Sheet.names("Session"),
                Sheet.names("Date"),
                Sheet.names("Fixture"),
                Sheet.numbers("Gave (dB)"),
                Sheet.numbers("Read (dB)"),
                Sheet.numbers("Added (dB)"),
                Sheet.names("Reading")));
    Optional<DriftCorrection> correction = outcome.sessions().flatMap(SessionReview::correction);
    if (outcome.sessions().isPresent()) {
      columns.add(Sheet.names("Check unit"));
    }
    if (correction.isPresent()) {
      columns.add(Sheet.ranges("Drift taken out (dB)"));
    }
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (Session session : outcome.study().sessions()) {
      List<Sheet.Cell> row = row(session, check);
      if (outcome.sessions().isPresent()) {
        row.add(Sheet.text(drift(outcome, session)));
      }
      correction.ifPresent(c -> row.add(Sheet.text(taken(c, session))));
      rows.add(row);
    }
    return new Sheet(
        "Sessions: what the calibrator gave, what was read, what was added to captures",
        columns,
        rows);
  }

  private static List<Sheet.Cell> row(Session session, Optional<CalibratorCheck> check) {
    return new ArrayList<>(
        List.of(
            Sheet.text(session.name()),
            Sheet.text(session.date()),
            Sheet.text(session.fixture()),
            Sheet.hundredths(session.calibratorTrueDb()),
            Sheet.hundredths(session.calibratorReadDb()),
            Sheet.hundredths(session.correctionDb()),
            Sheet.text(
                check.map(c -> c.holds(session) ? "in order" : "too far").orElse("not judged"))));
  }

  /** The least and the most that was taken out at any octave. */
  private static String taken(DriftCorrection correction, Session session) {
    DoubleSummaryStatistics taken =
        correction.taken().stream()
            .filter(t -> t.session().equals(session.name()))
            .mapToDouble(DriftCorrection.Taken::departureDb)
            .summaryStatistics();
    return taken.getCount() == 0
        ? "nothing"
        : Numbers.fixed(taken.getMin(), 2) + "\u00a0to\u00a0" + Numbers.fixed(taken.getMax(), 2);
  }

  private static String drift(StudyOutcome outcome, Session session) {
    Optional<FixtureDrift> fixture =
        outcome.sessions().stream()
            .flatMap(r -> r.fixtures().stream())
            .filter(f -> f.fixture().equals(session.fixture()))
            .findFirst();
    if (fixture.isEmpty() || fixture.get().without().contains(session.name())) {
      return "not captured";
    }
    if (fixture.get().level().limits().isEmpty()) {
      return "no limits";
    }
    boolean out =
        fixture.get().outOfControl().stream().anyMatch(o -> o.session().equals(session.name()));
    return out ? "out of control" : "steady";
  }
}
