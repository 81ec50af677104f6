package org.twinrig.report.html;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/**
 * What was wrong with the files, or worth knowing about them.
 *
 * @param refused what could not be used, all of it: place, what is wrong, what would be right
 * @param notes how files were taken
 * @param notesTitle how many notes there are
 * @param notesMore how many are not listed; empty when none
 */
public record ProblemList(
    List<String> refused, List<String> notes, String notesTitle, String notesMore) {
  private static final int MOST_NOTES = 500;

  static ProblemList of(List<Problem> problems) {
    List<String> refused =
        problems.stream().filter(p -> p.kind() != Problem.Kind.NOTE).map(Problem::text).toList();
    List<String> notes =
        problems.stream().filter(p -> p.kind() == Problem.Kind.NOTE).map(Problem::text).toList();
    int more = notes.size() - MOST_NOTES;
    return new ProblemList(
        refused,
        notes.stream().limit(MOST_NOTES).toList(),
        Numbers.count(notes.size(), "note", "notes") + " on how files were taken",
        more <= 0
            ? ""
            : Numbers.count(more, "note is", "notes are")
                + " not listed; twinrig inspect prints how a file is taken.");
  }
}
