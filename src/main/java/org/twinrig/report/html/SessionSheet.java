package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Session;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.CalibratorCheck;
import org.twinrig.study.Settings;

/** The sessions: what the calibrator read, and what the check unit says. */
final class SessionSheet {
  private SessionSheet() {}

  static StudyView.Sessions view(StudyOutcome outcome) {
    return new StudyView.Sessions(words(outcome), sheet(outcome), findings(outcome));
  }

  private static List<String> words(StudyOutcome outcome) {
    Settings settings = outcome.study().settings();
    if (outcome.study().sessions().isEmpty()) {
      return List.of(
          "The study has no table of sessions: captures stand as they were measured, and nothing is"
              + " known of the calibrator or of drift.");
    }
    List<String> words = new ArrayList<>();
    words.add(
        "A session is a run of captures made without switching the chain off. Its captures are"
            + " corrected by the level the calibrator gave minus the level that was read. "
            + pistonphone(outcome)
            + calibrators(settings));
    words.add(outcome.sessions().map(r -> checkUnit(r)).orElseGet(SessionSheet::noCheckUnit));
    return words;
  }

  private static String pistonphone(StudyOutcome outcome) {
    return outcome.study().sessions().stream()
            .anyMatch(s -> s.calibrator() == Calibrator.PISTONPHONE)
        ? "A pistonphone gives 20 lg (p / 101.325 kPa) dB more than stated, p the static pressure:"
            + " less than stated where the pressure is low. "
        : "";
  }

  private static String calibrators(Settings settings) {
    Optional<CalibratorCheck> check = CalibratorCheck.of(settings);
    if (check.isEmpty()) {
      return "The class of the calibrators is not stated, so that no reading was judged: write"
          + " `calibrator_class` into study.yaml.";
    }
    double driftDb = settings.sessions().microphoneDriftDb();
    return "A reading is in order within ± "
        + Numbers.fixed(check.get().limitDb(), 2)
        + " dB: the limit of class "
        + settings.calibratorClass().orElseThrow().word()
        + " of IEC 60942"
        + (driftDb > 0
            ? ", plus " + Numbers.fixed(driftDb, 2) + " dB that the lab lets its chain move."
            : ".");
  }

  private static String noCheckUnit() {
    return "No check unit is named. One unit captured in every session shows drift that a calibrator"
        + " at one frequency cannot: name it as `check_unit` in study.yaml.";
  }

  private static String checkUnit(SessionReview review) {
    return "The check unit "
        + review.unit()
        + " was captured session after session. Its level is charted as calibrated, because the anchor"
        + " takes every drift of level away; its octaves are charted relative to that level, because a"
        + " drift of shape stays in the results. Limits lie three standard deviations (σ, from the"
        + " median distance between neighbouring sessions) from the median; the moving average finds"
        + " small lasting shifts. A session is out of control when the level is outside, or two"
        + " neighbouring octaves are on the same side. A steady session is outside on one chart in about"
        + " 2 % of the cases, and by chance out of control in 2 % to 5 %. Nothing is left out for it. "
        + (review.correction().isPresent()
            ? "The lab asked for correction: what the check unit departed from its mean, octave by"
                + " octave and smooth between them, was taken out of every capture of the session; the"
                + " error budget carries what the check unit's own seating adds. The charts show the"
                + " state before it."
            : "No capture was changed; `drift: correct` in study.yaml would take the departures out.");
  }

  private static Sheet sheet(StudyOutcome outcome) {
    Optional<CalibratorCheck> check = CalibratorCheck.of(outcome.study().settings());
    List<Sheet.Column> columns =
        new ArrayList<>(
            List.of(
                Sheet.names("Session"),
                Sheet.names("Date"),
                Sheet.names("Fixture"),
                Sheet.numbers("Calibrator gave (dB)"),
                Sheet.numbers("Read (dB)"),
                Sheet.numbers("Correction (dB)"),
                Sheet.names("Reading")));
    if (outcome.sessions().isPresent()) {
      columns.add(Sheet.names("Check unit"));
    }
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (Session session : outcome.study().sessions()) {
      List<Sheet.Cell> row = row(session, check);
      if (outcome.sessions().isPresent()) {
        row.add(Sheet.text(drift(outcome, session)));
      }
      rows.add(row);
    }
    return new Sheet("Sessions", columns, rows);
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

  /** One sentence per session out of control, and one per fixture that has too few sessions. */
  private static List<String> findings(StudyOutcome outcome) {
    List<String> findings = new ArrayList<>();
    for (FixtureDrift f : outcome.sessions().map(SessionReview::fixtures).orElse(List.of())) {
      int seen = f.level().points().size();
      if (f.level().limits().isEmpty()) {
        findings.add(
            f.label()
                + ": "
                + Numbers.count(seen, "session", "sessions")
                + " with the check unit; limits cannot be had from fewer than "
                + DriftChart.FEWEST_SESSIONS
                + ", because one odd session would widen the limits it is held against.");
      }
      f.outOfControl().forEach(o -> findings.add(f.label() + ", " + sentence(o)));
    }
    return findings;
  }

  static String sentence(FixtureDrift.OutOfControl o) {
    String what =
        o.charts().stream()
            .map(c -> c.band().isEmpty() ? "the level" : c.words())
            .collect(Collectors.joining(", "));
    return o.session()
        + ": out of control by "
        + what
        + "; the greatest departure against its limit is "
        + Numbers.against(o.departureDb(), o.limitDb(), 2)
        + " dB, but at most "
        + Numbers.fixed(o.limitDb(), 2)
        + " dB is allowed. Look at the chain and at how the check unit sat, and capture the session's"
        + " units again or exclude them with a reason.";
  }
}
