package org.twinrig.simulation;

import java.util.List;

/**
 * The maker's tuning of a unit, the level it is meant to give on a typical ear, apart from what the
 * ear itself adds: slope about 500 Hz, shelf below about 100 Hz, second-order roll-offs of bass and
 * treble, and broad rises and dips.
 */
record Balance(
    double tiltDbPerOctave, double bassDb, double lowestHz, double highestHz, List<Mode> peaks) {

  private static final double TILT_ABOUT_HZ = 500;
  private static final double SHELF_HZ = 100;

  static Balance draw(Draws draws, double lowestHz, double highestHz) {
    double tilt = draws.gaussian(-0.4, 0.35);
    double bass = draws.gaussian(2, 2);
    double corner = draws.logNormal(lowestHz, 0.2);
    double ceiling = draws.logNormal(highestHz, 0.15);
    Mode[] peaks = new Mode[5];
    for (int i = 0; i < peaks.length; i++) {
      double hz = 120 * StrictMath.pow(100, (i + draws.uniform()) / peaks.length);
      peaks[i] = new Mode(hz, draws.between(0.7, 2.5), draws.gaussian(0, 1.6));
    }
    return new Balance(tilt, bass, corner, ceiling, List.of(peaks));
  }

  /** The tuning at a frequency in Hz, as a factor on the sound pressure. */
  Complex at(double hz) {
    double tiltDb = tiltDbPerOctave * Math.log(hz / TILT_ABOUT_HZ) / Math.log(2);
    double shelf = Math.pow(10, bassDb / 20);
    double x = hz / SHELF_HZ;
    // First-order shelf (s + shelf)/(s + 1) and second-order high pass with Q = 0.7.
    Complex factor = new Complex(shelf, x).over(new Complex(1, x));
    double y = hz / lowestHz;
    factor = factor.times(new Complex(-y * y, 0).over(new Complex(1 - y * y, y / 0.7)));
    double z = hz / highestHz;
    factor = factor.over(new Complex(1 - z * z, z / 0.8));
    for (Mode peak : peaks) {
      factor = factor.times(peak.factor(hz, peak.gain()));
    }
    return factor.times(Math.pow(10, tiltDb / 20));
  }
}
