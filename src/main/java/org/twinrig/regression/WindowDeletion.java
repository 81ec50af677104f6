package org.twinrig.regression;

import java.util.Arrays;
import org.twinrig.internal.linalg.ThinSvd;

/**
 * The errors of one window at one band on units that did not enter, for any penalty: one
 * factorisation serves them all.
 */
final class WindowDeletion {
  private final StackedWindow window;
  private final ThinSvd svd;
  private final double scale;
  private final double[] projections;
  private final BlockDeletion blocks;

  /** Factors a window. */
  WindowDeletion(StackedWindow window) {
    this.window = window;
    this.svd = window.factor();
    this.scale = window.scale();
    this.projections = new double[window.predictors()];
    this.blocks = new BlockDeletion(window.units(), window.rows(), window.predictors());
    double[] y = window.differences();
    for (int k = 0; k < projections.length; k++) {
      for (int row = 0; row < y.length; row++) {
        projections[k] += svd.u(row, k) * y[row];
      }
    }
  }

  /** Sets the penalty {@code λ = κ·s}; the errors on units left out stand until the next call. */
  BlockDeletion at(double kappa) {
    double lambda = kappa * scale;
    int units = window.units();
    double[][] z = blocks.z();
    double[][] e = blocks.e();
    for (int r = 0; r < window.rows(); r++) {
      System.arraycopy(window.differences(), r * units, e[r], 0, units);
    }
    for (int k = 0; k < projections.length; k++) {
      double kept = kept(svd.sigma(k), lambda);
      double root = Math.sqrt(kept);
      double fitted = kept * projections[k];
      for (int r = 0; r < window.rows(); r++) {
        double[] column = z[k * window.rows() + r];
        for (int i = 0; i < units; i++) {
          double u = svd.u(r * units + i, k);
          column[i] = root * u;
          e[r][i] -= fitted * u;
        }
      }
    }
    blocks.prepare();
    return blocks;
  }

  /** Share of a direction that a penalty leaves, {@code σ²/(σ²+λ)}. */
  private static double kept(double sigma, double lambda) {
    return sigma == 0 ? 0 : sigma * sigma / (sigma * sigma + lambda);
  }

  /** Errors on each unit left out alone, dB. */
  static double[] withoutOne(BlockDeletion blocks, int units) {
    double[] errors = new double[units];
    Arrays.setAll(errors, blocks::withoutOne);
    return errors;
  }
}
