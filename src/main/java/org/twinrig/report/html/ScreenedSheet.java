package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.Verdict;
import org.twinrig.study.ScreeningMode;

/** Which captures were doubted or left out, by whom and why. */
final class ScreenedSheet {
  private ScreenedSheet() {}

  static String lead(StudyOutcome outcome) {
    List<Verdict> verdicts = outcome.screening().verdicts();
    long doubted = verdicts.stream().map(Verdict::capture).distinct().count();
    long out = verdicts.stream().filter(Verdict::excluded).map(Verdict::capture).distinct().count();
    long byLab =
        outcome.study().captures().stream().filter(CaptureEntry::excludedByLab).distinct().count();
    if (doubted + byLab == 0) {
      return "No capture was doubted and none was left out.";
    }
    return "The rules doubt "
        + Numbers.count(doubted, "capture", "captures")
        + " and left out "
        + out
        + "; the lab left out "
        + byLab
        + ". Nothing was deleted: every file is still in its place."
        + (outcome.study().settings().screening() == ScreeningMode.SUGGEST
            ? " The study only suggests: what the rules doubt was used."
            : "");
  }

  static Sheet of(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (Verdict v : outcome.screening().verdicts()) {
      rows.add(row(v.capture(), v.sentence(), v.excluded() ? "by a rule" : "not left out"));
    }
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
