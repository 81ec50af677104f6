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

/** Which sessions are out of control, and what else is told of sessions only where it is so. */
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

  /** Sessions with the same charts outside and the same limit share a sentence. */
  public static List<String> outOfControl(FixtureDrift fixture) {
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
