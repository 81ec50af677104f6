package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;

/** What went into a study and what did not, for the head of its report. */
final class EntryWords {
  private EntryWords() {}

  /** How many units are listed, and what became of those no estimate rests on. */
  static String units(StudyOutcome outcome) {
    List<Unit> listed = outcome.study().units();
    int least = outcome.study().settings().minUnits();
    List<Integer> sizes = outcome.kinds().stream().map(k -> k.paired().units().size()).toList();
    long few = sizes.stream().filter(n -> n < least).mapToInt(n -> n).sum();
    long fitted = sizes.stream().mapToInt(n -> n).sum() - few;
    long heldOut = count(listed, Unit.Role.HOLDOUT);
    long check = count(listed, Unit.Role.CHECK);
    long lacking = count(listed, Unit.Role.FIT) - fitted - few;
    String others =
        Stream.of(
                part(heldOut, heldOut == 1 ? "is" : "are", "held out"),
                part(check, check == 1 ? "is" : "are", "for checks only"),
                part(few, few == 1 ? "is" : "are", "of kinds with fewer than " + least),
                part(lacking, lacking == 1 ? "lacks" : "lack", "a usable capture on a fixture"))
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining(", "));
    String all = "Of " + Numbers.count(listed.size(), "unit", "units") + " listed, ";
    return others.isEmpty()
        ? all + "every one enters the estimates."
        : all + fitted + (fitted == 1 ? " enters" : " enter") + " the estimates; " + others + ".";
  }

  private static String part(long number, String verb, String what) {
    return number <= 0 ? "" : number + " " + verb + " " + what;
  }

  private static long count(List<Unit> units, Unit.Role role) {
    return units.stream().filter(u -> u.role() == role).count();
  }

  /** What was refused and noted; empty when nothing was. */
  static String problems(ProblemList problems) {
    List<String> parts = new ArrayList<>();
    int refused = problems.refused().size();
    if (refused > 0) {
      parts.add("Input was refused for " + Numbers.count(refused, "reason", "reasons"));
    }
    if (!problems.notes().isEmpty()) {
      parts.add(problems.notesTitle());
    }
    return String.join("; ", parts);
  }
}
