package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.screening.Verdict;

/** Which captures were doubted or left out, by whom and why: one row per capture. */
final class ScreenedSheet {
  private ScreenedSheet() {}

  static Sheet of(StudyOutcome outcome) {
    Map<CaptureEntry, List<Verdict>> byCapture = new LinkedHashMap<>();
    for (Verdict v : outcome.screening().verdicts()) {
      byCapture.computeIfAbsent(v.capture(), c -> new ArrayList<>()).add(v);
    }
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    byCapture.forEach(
        (capture, verdicts) ->
            rows.add(
                row(
                    capture,
                    verdicts.stream().map(Verdict::sentence).collect(Collectors.joining("; ")),
                    verdicts.stream().anyMatch(Verdict::excluded) ? "by a rule" : "no")));
    for (CaptureEntry c : outcome.study().captures()) {
      if (c.excludedByLab()) {
        rows.add(row(c, c.exclude(), "by the lab"));
      }
    }
    return new Sheet(
        "Captures doubted or left out",
        List.of(
            Sheet.names("Unit"),
            Sheet.names("Fixture"),
            Sheet.names("Side, seating"),
            Sheet.words("What was found"),
            Sheet.names("Left out"),
            Sheet.files("File")),
        rows);
  }

  private static List<Sheet.Cell> row(CaptureEntry c, String found, String by) {
    return List.of(
        Sheet.text(c.unit()),
        Sheet.text(c.fixture()),
        Sheet.text(c.side().name() + ", " + c.seating()),
        Sheet.text(found),
        Sheet.text(by),
        Sheet.text(c.file()));
  }
}
