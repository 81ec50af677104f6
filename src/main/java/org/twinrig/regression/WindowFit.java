package org.twinrig.regression;

import org.twinrig.internal.linalg.ThinSvd;

/** The fits of one window at a band; one factorisation serves all its penalties. */
final class WindowFit {
  private final WindowShape shape;
  private final StackedWindow window;
  private final ThinSvd svd;

  /** Factors a window that is offered at a band. */
  WindowFit(WindowData data, int band, WindowShape shape) {
    this.shape = shape;
    this.window = StackedWindow.of(data, band, shape).orElseThrow();
    this.svd = window.factor();
  }

  WindowShape shape() {
    return shape;
  }

  /** {@code λ = κ·s}. */
  double penalty(double kappa) {
    return kappa * window.scale();
  }

  /** {@code β} over the window, dB per dB, predictors outside the grid included. */
  double[] coefficients(double lambda) {
    return svd.ridge(window.differences(), lambda);
  }

  /** {@code x̄(c)} of predictor {@code k}, dB. */
  double centre(int k) {
    return window.centre(k);
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
