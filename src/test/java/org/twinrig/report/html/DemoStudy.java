package org.twinrig.report.html;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** The demonstration, read and analysed as the command line does it. */
record DemoStudy(StudyOutcome outcome, InputFingerprint fingerprint, List<Problem> problems) {
  static DemoStudy read() {
    return Once.DEMO;
  }

  /** Nothing in it changes, so that tests share it. */
  private static final class Once {
    static final DemoStudy DEMO = read(Path.of("studies", "plate-to-head"));
  }

  /** Any study, in the same way. */
  static DemoStudy read(Path folder) {
    try {
      Findings<Study> study = StudyReader.read(folder);
      Findings<List<Capture>> captures = CaptureReading.read(study.value(), 2);
      InputFingerprint fingerprint = InputFingerprint.of(study.value(), captures.value());
      StudyOutcome outcome =
          Analysis.of(study.value(), captures.value(), fingerprint.shortText(), 2);
      List<Problem> problems = new ArrayList<>(study.problems());
      problems.addAll(captures.problems());
      problems.addAll(outcome.problems());
      return new DemoStudy(outcome, fingerprint, problems);
    } catch (UnusableInput e) {
      throw new IllegalStateException(e);
    }
  }
}
