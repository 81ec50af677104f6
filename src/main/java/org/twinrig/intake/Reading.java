package org.twinrig.intake;

import java.util.List;
import java.util.Objects;
import org.twinrig.problem.Problem;
import org.twinrig.response.Response;

/**
 * A capture file as read.
 *
 * @param response the curve, in Hz and dB, at rising frequencies
 * @param layout how the file was understood
 * @param notes what the lab should know; all of kind {@code NOTE}, in the order of lines
 * @param sha256 the file's bytes as a SHA-256 in 64 hexadecimal digits
 * @param points how many points the file holds, counting those left out with a note
 * @param source the file's name in messages
 */
public record Reading(
    Response response,
    CaptureLayout layout,
    List<Problem> notes,
    String sha256,
    long points,
    String source) {

  public Reading {
    Objects.requireNonNull(response, "response");
    Objects.requireNonNull(layout, "layout");
    Objects.requireNonNull(sha256, "sha256");
    Objects.requireNonNull(source, "source");
    notes = List.copyOf(notes);
    if (notes.stream().anyMatch(note -> note.kind() != Problem.Kind.NOTE)) {
      throw new IllegalArgumentException("what was read carries notes only");
    }
    if (points < response.size()) {
      throw new IllegalArgumentException("a file cannot hold fewer points than its curve");
    }
  }
}
