package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Whether a study can be held against others: what must be the same in all of them. */
final class Comparability {
  private final StudyComparison.Named study;
  private final List<Problem> problems = new ArrayList<>();

  private Comparability(StudyComparison.Named study) {
    this.study = study;
  }

  static List<Problem> problems(List<StudyComparison.Named> others, StudyComparison.Named study) {
    Comparability checks = new Comparability(study);
    for (StudyComparison.Named other : others) {
      if (other.outcome().fingerprint().equals(study.outcome().fingerprint())) {
        checks.refuse(
            "the study is the same as " + other.place(),
            "give each study once: a study says nothing about itself");
        return checks.problems;
      }
      checks.sharedCaptures(other);
      if (!checks.problems.isEmpty()) {
        return checks.problems;
      }
    }
    checks.against(others.get(0));
    return checks.problems;
  }

  private void against(StudyComparison.Named first) {
    Study one = first.outcome().study();
    Study two = study.outcome().study();
    if (!one.from().label().equals(two.from().label())
        || !one.to().label().equals(two.to().label())) {
      refuse(
          "the study goes from " + way(two) + ", but " + first.place() + " goes from " + way(one),
          "compare studies of the same two fixtures, with the same labels in study.yaml");
    }
    settings(one.settings(), two.settings(), " than " + first.place());
  }

  /** Under another title or other settings the same captures are still one lab's evidence. */
  private void sharedCaptures(StudyComparison.Named other) {
    Set<String> theirs = files(other);
    Set<String> own = files(study);
    long shared = own.stream().filter(theirs::contains).count();
    if (shared > 0) {
      refuse(
          "%s of the %s it rests on %s the same as in %s"
              .formatted(
                  shared,
                  Numbers.count(own.size(), "capture file", "capture files"),
                  shared == 1 ? "is" : "are",
                  other.place()),
          "compare studies that have no captures in common: the same captures, whatever the"
              + " settings, say nothing about another lab");
    }
  }

  /** By the SHA-256 of their bytes, whatever their names. */
  private static Set<String> files(StudyComparison.Named study) {
    return study.outcome().screening().accepted().stream()
        .map(a -> a.capture().sha256())
        .collect(Collectors.toSet());
  }

  private void settings(Settings one, Settings two, String than) {
    if (!one.grid().equals(two.grid())) {
      refuse("the study has other bands" + than, same("bands"));
    }
    if (!one.anchor().equals(two.anchor())) {
      String anchors = " (" + two.anchor().words() + "; " + one.anchor().words() + ")";
      refuse("the study is anchored otherwise" + than + anchors, same("anchor"));
    }
    if (!one.captureSmoothing().equals(two.captureSmoothing())) {
      refuse(
          "the captures are smoothed otherwise" + than,
          "compare captures that were smoothed alike");
    }
    if (one.confidence() != two.confidence()) {
      refuse("the study has another confidence" + than, same("confidence"));
    }
    if (one.tolerance().equivalenceDb() != two.tolerance().equivalenceDb()) {
      refuse("the study has another equivalence_db" + than, same("tolerance.equivalence_db"));
    }
  }

  private void refuse(String what, String remedy) {
    problems.add(Problem.fatal(study.place(), 0, what, remedy));
  }

  private static String way(Study study) {
    return "`" + study.from().label() + "` to `" + study.to().label() + "`";
  }

  private static String same(String key) {
    return "set the same `" + key + "` in study.yaml of both";
  }
}
