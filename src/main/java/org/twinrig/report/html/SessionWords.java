package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Calibrator;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.CalibratorCheck;
import org.twinrig.study.Settings;

/** What is to be said about the sessions: how they were treated, and which are out of control. */
final class SessionWords {
  private SessionWords() {}

  static List<String> howToRead(StudyOutcome outcome) {
    Settings settings = outcome.study().settings();
    if (outcome.study().sessions().isEmpty()) {
      return List.of(
          "The study has no usable table of sessions: captures stand as they were measured, and"
              + " nothing is known of the calibrator or of drift.");
    }
    List<String> words = new ArrayList<>();
    words.add(
        "A session is a run of captures made without switching the chain off. To its captures the"
            + " level the calibrator gave minus the level that was read is added. "
            + pistonphone(outcome)
            + calibrators(settings)
            + withoutSession(outcome));
    outcome
        .sessions()
        .ifPresentOrElse(
            review -> words.addAll(List.of(charts(review), change(review))),
            () -> words.add(noCheckUnit()));
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

  private static String withoutSession(StudyOutcome outcome) {
    long count = outcome.study().captures().stream().filter(c -> c.session().isEmpty()).count();
    return count == 0
        ? ""
        : " "
            + Numbers.count(count, "capture names", "captures name")
            + " no session: nothing is corrected there.";
  }

  static String noCheckUnit() {
    return "No check unit is named: whether the chain drifted between sessions, beyond what the"
        + " calibrator shows at its one frequency, is not known, and nothing is charted or corrected"
        + " for it. To know, capture one unit in every session and name it as `check_unit` in"
        + " study.yaml.";
  }

  private static String charts(SessionReview review) {
    return "The check unit "
        + review.unit()
        + " was captured session after session. Charted are its level as calibrated (the anchor would"
        + " hide a drift of level) and its octaves relative to that level. Limits are the median"
        + " ± 3 σ, σ taken from the median distance between neighbouring sessions; a moving average"
        + " finds small lasting shifts. A session is out of control when its level is outside, or two"
        + " neighbouring octaves are on the same side; chance alone does that to 2 % to 5 % of steady"
        + " sessions.";
  }

  private static String change(SessionReview review) {
    return review.correction().isPresent()
        ? "The lab asked for correction: octave by octave, smooth between them, the check unit's"
            + " departure from its mean over the sessions was taken out of every capture of the session"
            + " (drift-correction.csv). What all sessions share cannot be seen and stays. Charts and"
            + " findings show the state before it; the error budget carries what it costs."
        : "No capture was changed or left out for it; `drift: correct` in study.yaml would take the"
            + " departures out.";
  }

  /**
   * One sentence per session out of control, and one per fixture where something is not possible.
   */
  static List<String> findings(StudyOutcome outcome) {
    List<String> findings = new ArrayList<>();
    boolean out = false;
    for (FixtureDrift f : outcome.sessions().map(SessionReview::fixtures).orElse(List.of())) {
      tooFew(f).ifPresent(findings::add);
      if (outcome.sessions().flatMap(SessionReview::correction).isPresent()
          && f.level().points().size() < 2) {
        findings.add(
            f.label()
                + ": nothing was corrected, because that takes two sessions with the check unit.");
      }
      findings.addAll(outOfControl(f));
      out |= !f.outOfControl().isEmpty();
    }
    if (out) {
      findings.add(
          "Look at the chain and at how the check unit sat in these sessions; capture their units"
              + " again, or exclude them with a reason.");
    }
    return findings;
  }

  private static Optional<String> tooFew(FixtureDrift f) {
    return f.level().limits().isPresent()
        ? Optional.empty()
        : Optional.of(
            f.label()
                + ": "
                + Numbers.count(f.level().points().size(), "session", "sessions")
                + " with the check unit; limits cannot be had from fewer than "
                + DriftChart.FEWEST_SESSIONS
                + ", because one odd session would widen the limits it is held against.");
  }

  /** Sessions with the same charts outside and the same limit share a sentence. */
  static List<String> outOfControl(FixtureDrift fixture) {
    Map<String, List<String>> sessions = new LinkedHashMap<>();
    for (FixtureDrift.OutOfControl o : fixture.outOfControl()) {
      String how =
          "out of control by "
              + o.charts().stream().map(SessionWords::words).collect(Collectors.joining(", "))
              + (o.charts().size() > 1 ? "; farthest out is " + words(o.worst()) : "")
              + "; at most "
              + Numbers.fixed(o.limitDb(), 2)
              + " dB from the middle is allowed.";
      sessions
          .computeIfAbsent(how, h -> new ArrayList<>())
          .add(o.session() + " (" + Numbers.against(o.departureDb(), o.limitDb(), 2) + " dB)");
    }
    return sessions.entrySet().stream()
        .map(
            e ->
                fixture.label()
                    + ": "
                    + String.join(", ", e.getValue())
                    + (e.getValue().size() == 1 ? " is " : " are ")
                    + e.getKey())
        .toList();
  }

  private static String words(DriftChart chart) {
    return (chart.band().isEmpty() ? "the " : "") + chart.words();
  }
}
