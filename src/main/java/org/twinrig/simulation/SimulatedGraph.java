package org.twinrig.simulation;

import org.twinrig.response.Response;

/**
 * An old graph of a unit that is not in the study, made on the old fixture. Its kind as listed,
 * {@code unknown} for a few; the curve in its file, the mean in dB over so many good seatings, less
 * the reference curve when it is compensated.
 *
 * @param truth what it really is; empty where it is what it is listed as
 */
public record SimulatedGraph(
    String graph,
    String unit,
    String kind,
    Response response,
    int seatings,
    Form form,
    String truth) {

  public enum Form {
    RAW,
    /** A reference curve was subtracted. */
    COMPENSATED
  }
}
