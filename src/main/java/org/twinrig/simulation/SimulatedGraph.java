package org.twinrig.simulation;

import org.twinrig.response.Response;

/**
 * An old graph of a unit that is not in the study, made on the old fixture.
 *
 * @param kind its true kind; the one listed in the catalogue is {@code unknown} for a few
 * @param response the curve in its file: the mean in dB over its seatings, less the reference curve
 *     when it is compensated
 * @param seatings how many good seatings were averaged
 */
public record SimulatedGraph(
    String graph,
    String unit,
    SimulatedKind kind,
    String listedKind,
    Response response,
    int seatings,
    Form form) {

  /** What was done to an old graph. */
  public enum Form {
    /** Nothing. */
    RAW,
    /** A reference curve was subtracted. */
    COMPENSATED
  }
}
