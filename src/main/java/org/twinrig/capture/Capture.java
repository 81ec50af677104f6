package org.twinrig.capture;

import org.twinrig.response.Response;

/**
 * One seating of one side of a unit on a fixture, as measured: the curve in its file, before any
 * correction, and the file's content as a hexadecimal SHA-256.
 */
public record Capture(CaptureEntry entry, Response response, String sha256) {

  /** The same capture corrected in level: what is added, dB. */
  public Capture plus(double correctionDb) {
    return correctionDb == 0 ? this : new Capture(entry, response.plus(correctionDb), sha256);
  }

  /** The same capture with another curve, for example smoothed. */
  public Capture withResponse(Response other) {
    return new Capture(entry, other, sha256);
  }
}
