package org.twinrig.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.linalg.ThinSvd;

/**
 * The rows a window ridge is fitted on: those of the band itself and of the pooled bands, each band
 * centred about its own means.
 *
 * <p>Every unit with a difference at the band takes part, or the shape is not offered there: all of
 * them need a level at every band of the window and a difference at every pooled band. A predictor
 * outside the grid, or where nothing was measured on the old fixture at all, is 0.
 */
final class StackedWindow {
  private final int units;
  private final int rows;
  private final int predictors;

  /** {@code w[(r·n + i)·p + k]}: one row per stacked band and unit; the band itself is last. */
  private final double[] w;

  /** {@code y[r·n + i]}: centred differences. */
  private final double[] y;

  /** {@code x̄(c)} over the window of the band itself. */
  private final double[] centres;

  private ThinSvd svd;

  private StackedWindow(int units, int rows, int predictors) {
    this.units = units;
    this.rows = rows;
    this.predictors = predictors;
    this.w = new double[rows * units * predictors];
    this.y = new double[rows * units];
    this.centres = new double[predictors];
  }

  /**
   * The rows at a band; nothing where a unit of the band lacks a level in the window or in a pooled
   * band.
   */
  static Optional<StackedWindow> of(WindowData data, int band, WindowShape shape) {
    int[] members = data.members(band);
    List<Integer> pooled = new ArrayList<>();
    for (int j = -shape.pooled(); j <= shape.pooled(); j++) {
      int pool = band + j * data.step();
      if (j != 0 && data.pools(pool)) {
        pooled.add(pool);
      }
    }
    pooled.add(band);
    StackedWindow window = new StackedWindow(members.length, pooled.size(), shape.predictors());
    for (int r = 0; r < pooled.size(); r++) {
      if (!window.fill(data, members, pooled.get(r), r, shape.half())) {
        return Optional.empty();
      }
    }
    window.svd = ThinSvd.of(window.w, window.rows * window.units, window.predictors);
    return Optional.of(window);
  }

  private boolean fill(WindowData data, int[] members, int pool, int r, int half) {
    double sum = 0;
    for (int i = 0; i < units; i++) {
      y[r * units + i] = data.difference(pool, members[i]);
      sum += y[r * units + i];
    }
    if (Double.isNaN(sum)) {
      return false;
    }
    for (int i = 0; i < units; i++) {
      y[r * units + i] -= sum / units;
    }
    for (int k = 0; k < predictors; k++) {
      int c = pool + (k - half) * data.step();
      if (data.predicts(c) && !fillColumn(data, members, c, r, k)) {
        return false;
      }
    }
    return true;
  }

  private boolean fillColumn(WindowData data, int[] members, int c, int r, int k) {
    double sum = 0;
    for (int i = 0; i < units; i++) {
      sum += data.level(c, members[i]);
    }
    if (Double.isNaN(sum)) {
      return false;
    }
    double mean = sum / units;
    for (int i = 0; i < units; i++) {
      w[(r * units + i) * predictors + k] = data.level(c, members[i]) - mean;
    }
    if (r == rows - 1) {
      centres[k] = mean;
    }
    return true;
  }

  int units() {
    return units;
  }

  int rows() {
    return rows;
  }

  int predictors() {
    return predictors;
  }

  /** Centred differences, {@code [r·n + i]}. */
  double[] differences() {
    return y;
  }

  /** {@code x̄(c)} of predictor {@code k} at the band itself, dB. */
  double centre(int k) {
    return centres[k];
  }

  /** {@code s = ‖W‖²_F/p}: the penalty is {@code λ = κ·s}. */
  double scale() {
    double squares = 0;
    for (double element : w) {
      squares += element * element;
    }
    return squares / predictors;
  }

  /** The factorisation that all penalties share. */
  ThinSvd factor() {
    return svd;
  }

  /** {@code β} at a penalty {@code λ}, dB per dB, predictors outside the grid included. */
  double[] coefficients(double lambda) {
    return svd.ridge(y, lambda);
  }

  /** Element {@code (r, s)} of {@code (WᵀW+λI)⁻¹}, 1/dB². */
  double spread(int r, int s, double lambda) {
    double sum = 0;
    for (int k = 0; k < svd.columns(); k++) {
      double size = svd.sigma(k) * svd.sigma(k) + lambda;
      // Where nothing scatters there is no penalty either, and no direction to lie outside of.
      sum += size == 0 ? 0 : svd.v(r, k) * svd.v(s, k) / size;
    }
    return sum;
  }
}
