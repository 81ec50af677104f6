package org.twinrig.reliability;

import java.util.Arrays;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;

/**
 * What a curve does at a band against its own smooth over one octave: {@code L(b) - Σ_k s_k
 * L(b+k)}.
 *
 * <p>The smooth is the mean of the curve, taken as constant within each band, over the octave (base
 * ten, {@code G = 10^(3/10)}) whose middle is the mid-band frequency. With {@code N} bands per
 * octave these are the band itself and {@code ⌊N/2⌋} on either side; for even {@code N} the
 * outermost two lie half inside and count half. Where the octave reaches beyond the grid or over a
 * missing level there is no answer: nothing is extrapolated.
 */
final class OctaveContrast {
  private final BandGrid grid;
  private final int half;

  /** {@code c_k} for {@code k} from {@code -half} to {@code half}; they add up to 0. */
  private final double[] weights;

  OctaveContrast(BandGrid grid) {
    int perOctave = grid.perOctave();
    this.grid = grid;
    this.half = perOctave / 2;
    this.weights = new double[2 * half + 1];
    Arrays.fill(weights, -1.0 / perOctave);
    if (perOctave % 2 == 0) {
      weights[0] /= 2;
      weights[2 * half] /= 2;
    }
    weights[half] += 1;
  }

  /** The contrast of a curve, dB; missing where the octave around a band is not wholly covered. */
  Levels of(Levels curve) {
    double[] db = new double[grid.size()];
    Arrays.setAll(db, b -> at(curve, b));
    return Levels.copyOf(grid, db);
  }

  private double at(Levels curve, int band) {
    if (band - half < 0 || band + half >= grid.size()) {
      return Double.NaN;
    }
    double sum = 0;
    for (int k = -half; k <= half; k++) {
      if (!curve.has(band + k)) {
        return Double.NaN;
      }
      sum += weights[half + k] * curve.db(band + k);
    }
    return sum;
  }

  /** {@code c_k} for each of {@link #bands}. */
  double[] weights() {
    return weights;
  }

  /** The bands of the octave around a band. */
  int[] bands(int band) {
    int[] bands = new int[weights.length];
    Arrays.setAll(bands, k -> band - half + k);
    return bands;
  }
}
