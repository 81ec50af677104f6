package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Calibrator;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;

/** Which sessions are out of control, and what is not possible for want of sessions. */
public final class SessionSentences {
  private SessionSentences() {}

  /** How many captures name no session. */
  public static long withoutSession(StudyOutcome outcome) {
    return outcome.study().captures().stream().filter(c -> c.session().isEmpty()).count();
  }

  /** Whether a calibrator's level depends on the static pressure. */
  public static boolean anyPistonphone(StudyOutcome outcome) {
    return outcome.study().sessions().stream()
        .anyMatch(s -> s.calibrator() == Calibrator.PISTONPHONE);
  }

  /** One sentence for what was found alike; none where all is in order. */
  public static List<String> findings(SessionReview review) {
    List<String> findings = new ArrayList<>();
    for (FixtureDrift f : review.fixtures()) {
      if (f.level().limits().isEmpty()) {
        findings.add(tooFew(f));
      }
      if (review.correction().isPresent() && f.level().points().size() < 2) {
        findings.add(
            f.label()
                + ": nothing was corrected, because that takes two sessions with the check unit.");
      }
      findings.addAll(outOfControl(f));
    }
    if (review.fixtures().stream().anyMatch(f -> !f.outOfControl().isEmpty())) {
      findings.add(
          "Look at the chain and at how the check unit sat in these sessions; capture their units"
              + " again, or exclude them with a reason.");
    }
    return findings;
  }

  private static String tooFew(FixtureDrift f) {
    return f.label()
        + ": "
        + Numbers.count(f.level().points().size(), "session", "sessions")
        + " with the check unit; limits cannot be had from fewer than "
        + DriftChart.FEWEST_SESSIONS
        + ", because one odd session would widen the limits it is held against.";
  }

  /** Sessions with the same charts outside and the same limit share a sentence. */
  static List<String> outOfControl(FixtureDrift fixture) {
    Map<String, List<String>> sessions = new LinkedHashMap<>();
    for (FixtureDrift.OutOfControl o : fixture.outOfControl()) {
      String how =
          "out of control by "
              + o.charts().stream().map(SessionSentences::words).collect(Collectors.joining(", "))
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
