package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Whether a study can be held against others: what must be the same in all of them. */
final class Comparability {
  private Comparability() {}

  static List<Problem> problems(List<StudyComparison.Named> others, StudyComparison.Named study) {
    List<Problem> problems = new ArrayList<>();
    StudyComparison.Named first = others.get(0);
    for (StudyComparison.Named other : others) {
      if (other.outcome().fingerprint().equals(study.outcome().fingerprint())) {
        problems.add(
            fatal(
                study,
                "the study is the same as " + other.place(),
                "give each study once: a study says nothing about itself"));
        return problems;
      }
      Optional<Problem> shared = sharedCaptures(other, study);
      if (shared.isPresent()) {
        return List.of(shared.get());
      }
    }
    Study one = first.outcome().study();
    Study two = study.outcome().study();
    if (!one.from().label().equals(two.from().label())
        || !one.to().label().equals(two.to().label())) {
      problems.add(
          fatal(
              study,
              "the study goes from "
                  + way(two)
                  + ", but "
                  + first.place()
                  + " goes from "
                  + way(one),
              "compare studies of the same two fixtures, with the same labels in study.yaml"));
    }
    settings(first, study, problems);
    return problems;
  }

  /** Under another title or other settings the same captures are still one lab's evidence. */
  private static Optional<Problem> sharedCaptures(
      StudyComparison.Named other, StudyComparison.Named study) {
    Set<String> theirs = files(other);
    Set<String> own = files(study);
    long shared = own.stream().filter(theirs::contains).count();
    return shared == 0
        ? Optional.empty()
        : Optional.of(
            fatal(
                study,
                shared
                    + " of the "
                    + Numbers.count(own.size(), "capture file", "capture files")
                    + " it rests on "
                    + (shared == 1 ? "is" : "are")
                    + " the same as in "
                    + other.place(),
                "compare studies that have no captures in common: the same captures, whatever the"
                    + " settings, say nothing about another lab"));
  }

  /** By the SHA-256 of their bytes, whatever their names. */
  private static Set<String> files(StudyComparison.Named study) {
    return study.outcome().screening().accepted().stream()
        .map(a -> a.capture().sha256())
        .collect(Collectors.toSet());
  }

  private static void settings(
      StudyComparison.Named first, StudyComparison.Named study, List<Problem> problems) {
    Settings one = first.outcome().study().settings();
    Settings two = study.outcome().study().settings();
    String than = " than " + first.place();
    if (!one.grid().equals(two.grid())) {
      problems.add(fatal(study, "the study has other bands" + than, same("bands")));
    }
    if (!one.anchor().equals(two.anchor())) {
      problems.add(
          fatal(
              study,
              "the study is anchored otherwise"
                  + than
                  + " ("
                  + two.anchor().words()
                  + "; "
                  + one.anchor().words()
                  + ")",
              same("anchor")));
    }
    if (!one.captureSmoothing().equals(two.captureSmoothing())) {
      problems.add(
          fatal(
              study,
              "the captures are smoothed otherwise" + than,
              "compare captures that were smoothed alike"));
    }
    if (one.confidence() != two.confidence()) {
      problems.add(fatal(study, "the study has another confidence" + than, same("confidence")));
    }
    if (one.tolerance().equivalenceDb() != two.tolerance().equivalenceDb()) {
      problems.add(
          fatal(
              study,
              "the study has another equivalence_db" + than,
              same("tolerance.equivalence_db")));
    }
  }

  private static String way(Study study) {
    return "`" + study.from().label() + "` to `" + study.to().label() + "`";
  }

  private static String same(String key) {
    return "set the same `" + key + "` in study.yaml of both";
  }

  private static Problem fatal(StudyComparison.Named study, String what, String remedy) {
    return Problem.fatal(study.place(), 0, what, remedy);
  }
}
