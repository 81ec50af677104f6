package org.twinrig.capture;

import java.util.Objects;
import org.twinrig.response.Response;

/**
 * One seating of one side of a unit on a fixture, as measured.
 *
 * @param entry what was measured
 * @param response the curve in its file, before any correction
 * @param sha256 the file's content as a hexadecimal SHA-256
 */
public record Capture(CaptureEntry entry, Response response, String sha256) {

  public Capture {
    Objects.requireNonNull(entry, "entry");
    Objects.requireNonNull(response, "response");
    Objects.requireNonNull(sha256, "sha256");
  }

  /**
   * The same capture corrected in level.
   *
   * @param correctionDb added to every level, dB
   */
  public Capture plus(double correctionDb) {
    return correctionDb == 0 ? this : new Capture(entry, response.plus(correctionDb), sha256);
  }

  /**
   * The same capture with another curve, for example smoothed.
   *
   * @param other the curve
   * @return the changed capture
   */
  public Capture withResponse(Response other) {
    return new Capture(entry, other, sha256);
  }
}
