package org.twinrig.problem;

import java.util.Objects;
import org.twinrig.internal.Printable;

/**
 * One thing that is wrong, or worth knowing, about the lab's files: where, what, and what would be
 * right.
 *
 * @param kind what became of the input
 * @param source the file, as the lab knows it (relative to the folder it named), or a command-line
 *     option; never empty
 * @param line the line in the file counted from 1, or 0 when the file as a whole is meant
 * @param what what is wrong, one clause without a final stop
 * @param remedy what would be right, one clause without a final stop; empty only for a {@link
 *     Kind#NOTE}
 */
public record Problem(Kind kind, String source, int line, String what, String remedy) {
  /** Longer than anything this program says; what it quotes from a file may be of any length. */
  private static final int LONGEST = 1000;

  /** What became of the input the problem is about. */
  public enum Kind {
    /** Nothing can be computed until this is mended. */
    FATAL,
    /** The item was left out; the rest went on. */
    REFUSED,
    /** The item was used; the lab should know how it was taken. */
    NOTE
  }

  public Problem {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(remedy, "remedy");
    if (source.isBlank() || what.isBlank()) {
      throw new IllegalArgumentException("a problem needs a source and a text");
    }
    source = printable(source);
    what = printable(what);
    remedy = printable(remedy);
    if (line < 0) {
      throw new IllegalArgumentException("line must be 0 or more, but is " + line);
    }
    if (kind != Kind.NOTE && remedy.isBlank()) {
      throw new IllegalArgumentException("a problem that costs the lab data needs a remedy");
    }
  }

  /** A problem that stops everything. */
  public static Problem fatal(String source, int line, String what, String remedy) {
    return new Problem(Kind.FATAL, source, line, what, remedy);
  }

  /** A problem that costs one item. */
  public static Problem refused(String source, int line, String what, String remedy) {
    return new Problem(Kind.REFUSED, source, line, what, remedy);
  }

  /** Something the lab should know about an item that was used: how it was taken. */
  public static Problem note(String source, int line, String what) {
    return new Problem(Kind.NOTE, source, line, what, "");
  }

  /** The same about another line, with an addition to what is wrong. */
  Problem at(int other, String addition) {
    return new Problem(kind, source, other, what + addition, remedy);
  }

  /** The problem as one line of text: {@code file:line: what is wrong; what would be right}. */
  public String text() {
    String place = line == 0 ? source : source + ":" + line;
    return remedy.isBlank() ? place + ": " + what : place + ": " + what + "; " + remedy;
  }

  /** What it quotes from a file may be of any length and hold anything. */
  private static String printable(String text) {
    int end = text.length() <= LONGEST ? text.length() : LONGEST - 1;
    return Printable.line(text.substring(0, end)) + (end < text.length() ? "…" : "");
  }
}
