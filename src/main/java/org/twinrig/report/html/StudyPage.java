package org.twinrig.report.html;

import java.util.List;
import java.util.Map;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Problem;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.study.InputFingerprint;

/** The report of a study. */
public final class StudyPage {
  private StudyPage() {}

  /**
   * One self-contained page.
   *
   * @param problems what was wrong with the lab's files
   */
  public static String html(
      StudyOutcome outcome,
      InputFingerprint fingerprint,
      List<Problem> problems,
      StudyDrawings figures) {
    return Page.fill(
        "study.jte",
        Map.of(
            "outcome", outcome,
            "fingerprint", fingerprint,
            "problems", problems,
            "figures", figures));
  }
}
