package org.twinrig.doubt;

import java.util.Arrays;
import org.twinrig.response.Levels;

/**
 * The energy of a curve's fine structure: mean squares of second differences {@code L(b-k) - 2·L(b)
 * + L(b+k)} of its band levels, {@code k} 1/12, 1/6 and 1/3 octave, below 1 kHz, from 1 to 4 kHz
 * and above; dB². Smoothing takes from the narrow differences first, noise adds to them most.
 */
final class FineStructure {
  /** With fewer bands an octave there is no fine structure to see. */
  static final int BANDS_PER_OCTAVE = 12;

  private static final int[] LAGS = {1, 2, 4};
  private static final double[] ENDS_HZ = {1000, 4000, Double.POSITIVE_INFINITY};

  /** How many energies there are. */
  static final int SIZE = 9;

  /** A hundredth of a decibel, to which files are written, and a little more. */
  static final double FLOOR_DB2 = 1e-4;

  private FineStructure() {}

  /** The energies over a run; 0 where it does not reach. */
  static double[] energies(Levels levels, Run run) {
    double[] sums = new double[SIZE];
    int[] counts = new int[SIZE];
    int end = Math.min(run.to(), levels.grid().size());
    for (int q = 0; q < LAGS.length; q++) {
      int lag = LAGS[q] * levels.grid().perOctave() / BANDS_PER_OCTAVE;
      int range = 0;
      for (int b = run.from() + lag; b < end - lag; b++) {
        while (levels.grid().band(b).midHz() > ENDS_HZ[range]) {
          range++;
        }
        if (levels.has(b) && levels.has(b - lag) && levels.has(b + lag)) {
          double d = levels.db(b - lag) - 2 * levels.db(b) + levels.db(b + lag);
          sums[range * LAGS.length + q] += d * d;
          counts[range * LAGS.length + q]++;
        }
      }
    }
    Arrays.setAll(sums, i -> counts[i] == 0 ? 0 : sums[i] / counts[i]);
    return sums;
  }

  /** Root mean square of the narrowest differences of a curve, as a level's own departure, dB. */
  static double rmsDb(Levels levels, Run run) {
    double[] energies = energies(levels, run);
    return Math.sqrt((energies[0] + energies[3] + energies[6]) / 3 / 6);
  }

  /**
   * Logarithms of energies, of which a graph's own part is known.
   *
   * @param more what is added to each, dB²; less than nothing where the graph averages more
   */
  static double[] logarithms(double[] energies, double[] more) {
    double[] logs = new double[SIZE];
    Arrays.setAll(
        logs, i -> Math.log(Math.max(0.3 * energies[i], energies[i] + more[i]) + FLOOR_DB2));
    return logs;
  }
}
