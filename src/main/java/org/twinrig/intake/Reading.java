package org.twinrig.intake;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.response.Response;

/**
 * A capture file as read.
 *
 * @param response the curve, in Hz and dB, at rising frequencies
 * @param understood what the file was taken to be, in sentences
 * @param notes what the lab should know; all of kind {@code NOTE}, in the order of lines
 * @param sha256 the file's bytes as a SHA-256 in 64 hexadecimal digits
 * @param points how many points the file holds, counting those left out with a note
 * @param source the file's name in messages
 */
public record Reading(
    Response response,
    List<String> understood,
    List<Problem> notes,
    String sha256,
    long points,
    String source) {

  public Reading {
    understood = List.copyOf(understood);
    notes = List.copyOf(notes);
  }

  /** How the file was understood, for a person: several lines, each ended by a line feed. */
  public String report() {
    List<String> lines = new ArrayList<>();
    lines.add(source);
    understood.forEach(sentence -> lines.add("  " + sentence));
    for (Problem note : notes) {
      lines.add(
          "  Note" + (note.line() > 0 ? " on line " + note.line() : "") + ": " + note.what() + ".");
    }
    lines.add("  SHA-256 " + sha256);
    return String.join("\n", lines) + "\n";
  }

  /** The extent of a curve in words, without a full stop. */
  static String extent(Response response) {
    DoubleSummaryStatistics levels =
        IntStream.range(0, response.size()).mapToDouble(response::levelDb).summaryStatistics();
    return "A curve of %s from %s to %s, with levels from %s dB to %s dB"
        .formatted(
            Numbers.count(response.size(), "point", "points"),
            Numbers.hertz(response.fromHz()),
            Numbers.hertz(response.toHz()),
            Numbers.fixed(levels.getMin(), 1),
            Numbers.fixed(levels.getMax(), 1));
  }
}
