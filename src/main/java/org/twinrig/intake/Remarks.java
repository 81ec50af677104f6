package org.twinrig.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** What there is to say about one file while it is read: notes are kept, a refusal ends it. */
final class Remarks {
  private static final int LONGEST_EXCERPT = 48;

  private final String source;
  private final List<Problem> notes = new ArrayList<>();

  Remarks(String source) {
    this.source = source;
  }

  /** The refusal of the whole file; to be thrown. {@code line} is 0 for the file as a whole. */
  UnusableInput refuse(int line, String what, String remedy) {
    return new UnusableInput(Problem.refused(source, line, what, remedy));
  }

  void note(int line, String what) {
    notes.add(Problem.note(source, line, what));
  }

  String source() {
    return source;
  }

  /** The notes in the order of their lines. */
  List<Problem> notes() {
    return notes.stream().sorted(Comparator.comparingInt(Problem::line)).toList();
  }

  /** A piece of the file inside a message: in quotes, on one line, not too long. */
  static String excerpt(String text) {
    String oneLine = text.replace('\t', ' ').strip();
    return oneLine.length() <= LONGEST_EXCERPT
        ? "'" + oneLine + "'"
        : "'" + oneLine.substring(0, LONGEST_EXCERPT - 1) + "…'";
  }
}
