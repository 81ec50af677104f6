package org.twinrig.simulation;

/**
 * The curve some old graphs had subtracted: a smooth rise about 3 kHz and a gentle slope, the lab's
 * own habit.
 */
final class ReferenceCurve {
  static final String NAME = "house-reference";

  private ReferenceCurve() {}

  /** Level at a frequency in Hz, dB, to the 0.01 dB its file holds. */
  static double levelDb(double hz) {
    double octaves = Math.log(hz / 3000) / Math.log(2);
    double rise = 10 * Math.exp(-octaves * octaves / 1.6);
    double slope = -0.6 * Math.log(hz / 500) / Math.log(2);
    return Math.rint((rise + slope) * 100) / 100;
  }
}
