package org.twinrig.regression;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.twinrig.study.PairedUnits;

/**
 * A kind's levels on the old fixture and differences as plain arrays.
 *
 * @param x {@code [band][unit]} levels on the old fixture, dB; NaN, in here only, where there is
 *     none
 * @param d {@code [band][unit]} differences, dB; NaN likewise
 * @param members {@code [band]} units with a difference, rising
 * @param anyLevel {@code [band]} whether anything was measured on the old fixture
 */
@SuppressWarnings("ArrayRecordComponent") // stays in this package
record WindowData(
    int units, int perOctave, double[][] x, double[][] d, int[][] members, boolean[] anyLevel) {

  static WindowData of(PairedUnits paired) {
    int bands = paired.grid().size();
    int units = paired.units().size();
    double[][] x = new double[bands][units];
    double[][] d = new double[bands][units];
    int[][] members = new int[bands][];
    boolean[] anyLevel = new boolean[bands];
    for (int b = 0; b < bands; b++) {
      for (int i = 0; i < units; i++) {
        x[b][i] = paired.from().means().get(i).level(b).orElse(Double.NaN);
        d[b][i] = paired.to().means().get(i).level(b).orElse(Double.NaN) - x[b][i];
      }
      double[] differences = d[b];
      members[b] = IntStream.range(0, units).filter(i -> !Double.isNaN(differences[i])).toArray();
      anyLevel[b] = Arrays.stream(x[b]).anyMatch(level -> !Double.isNaN(level));
    }
    return new WindowData(units, paired.grid().perOctave(), x, d, members, anyLevel);
  }

  int bands() {
    return x.length;
  }

  int step() {
    return WindowShape.step(perOctave);
  }

  /** Units with a difference at a band, rising. */
  int[] members(int band) {
    return members[band];
  }

  /** {@code x_i(b)}, dB; NaN where there is none. */
  double level(int band, int unit) {
    return x[band][unit];
  }

  /** {@code d_i(b)}, dB; NaN where there is none. */
  double difference(int band, int unit) {
    return d[band][unit];
  }

  /** Whether a band is in the grid and anything was measured there on the old fixture. */
  boolean predicts(int band) {
    return band >= 0 && band < bands() && anyLevel[band];
  }

  /** Whether a band is in the grid and has differences to learn from. */
  boolean pools(int band) {
    return band >= 0 && band < bands() && members[band].length > 0;
  }
}
