package org.twinrig.regression;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.twinrig.study.PairedUnits;

/** A kind's levels on the old fixture and differences as plain arrays, band after band. */
final class WindowData {
  private final int bands;
  private final int units;
  private final int perOctave;

  /** {@code [band][unit]}; NaN, in here only, where a unit has no level. */
  private final double[][] x;

  private final double[][] d;
  private final int[][] members;
  private final boolean[] anyLevel;

  private WindowData(int bands, int units, int perOctave) {
    this.bands = bands;
    this.units = units;
    this.perOctave = perOctave;
    this.x = new double[bands][units];
    this.d = new double[bands][units];
    this.members = new int[bands][];
    this.anyLevel = new boolean[bands];
  }

  static WindowData of(PairedUnits paired) {
    WindowData data =
        new WindowData(
            paired.grid().size(), paired.units().size(), paired.grid().band(0).perOctave());
    for (int b = 0; b < data.bands; b++) {
      for (int i = 0; i < data.units; i++) {
        data.x[b][i] = paired.from().means().get(i).level(b).orElse(Double.NaN);
        data.d[b][i] = paired.to().means().get(i).level(b).orElse(Double.NaN) - data.x[b][i];
      }
      double[] differences = data.d[b];
      data.members[b] =
          IntStream.range(0, data.units).filter(i -> !Double.isNaN(differences[i])).toArray();
      data.anyLevel[b] = Arrays.stream(data.x[b]).anyMatch(level -> !Double.isNaN(level));
    }
    return data;
  }

  int bands() {
    return bands;
  }

  int units() {
    return units;
  }

  int perOctave() {
    return perOctave;
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
    return band >= 0 && band < bands && anyLevel[band];
  }

  /** Whether a band is in the grid and has differences to learn from. */
  boolean lends(int band) {
    return band >= 0 && band < bands && members[band].length > 0;
  }
}
