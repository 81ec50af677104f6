package org.twinrig.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** What there is to say about one file while it is read: notes are kept, a refusal ends it. */
final class Remarks {
  private static final int LONGEST_EXCERPT = 48;

  private final String source;
  private final List<Problem> notes = new ArrayList<>();

  Remarks(String source) {
    this.source = source;
  }

  /** The refusal of the whole file; to be thrown. */
  UnusableInput refuse(String what, String remedy) {
    return refuse(0, what, remedy);
  }

  /** The refusal of the whole file for one of its lines; to be thrown. */
  UnusableInput refuse(int line, String what, String remedy) {
    return new UnusableInput(Problem.refused(source, line, what, remedy));
  }

  void note(int line, String what) {
    notes.add(Problem.note(source, line, what));
  }

  /** The file as read, with the notes in the order of their lines. */
  Reading reading(Response response, List<String> understood, byte[] bytes, long points) {
    List<Problem> inOrder = notes.stream().sorted(Comparator.comparingInt(Problem::line)).toList();
    return new Reading(response, understood, inOrder, Sha256.hex(bytes), points, source);
  }

  /** A piece of the file inside a message: in quotes, on one line, not too long. */
  static String excerpt(String text) {
    String oneLine = text.replace('\t', ' ').strip();
    return oneLine.length() <= LONGEST_EXCERPT
        ? "'" + oneLine + "'"
        : "'" + oneLine.substring(0, LONGEST_EXCERPT - 1) + "…'";
  }
}
