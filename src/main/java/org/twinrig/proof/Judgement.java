package org.twinrig.proof;

import org.twinrig.band.Band;
import org.twinrig.internal.Checks;

/**
 * One band of one unit that no fit saw.
 *
 * @param kind the unit's kind
 * @param graphSeatings how many seatings its old graph averages
 * @param band the band
 * @param errorDb level of the re-capture minus predicted level, dB
 * @param halfDb half-width of the prediction interval, dB
 */
record Judgement(String kind, int graphSeatings, Band band, double errorDb, double halfDb) {
  Judgement {
    Checks.finite(errorDb, "an error in dB");
    Checks.notNegative(halfDb, "a prediction half-width in dB");
  }

  boolean inside() {
    return Math.abs(errorDb) <= halfDb;
  }

  /** Whether the re-capture lies below the interval. */
  boolean below() {
    return errorDb < -halfDb;
  }
}
