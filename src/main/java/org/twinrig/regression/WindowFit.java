package org.twinrig.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.internal.linalg.ThinSvd;
import org.twinrig.study.PairedUnits;

/** Makes the rules of one shape at a band; one factorisation serves all its penalties. */
final class WindowFit {
  private final WindowData data;
  private final PairedUnits paired;
  private final int band;
  private final WindowShape shape;
  private final StackedWindow window;
  private final ThinSvd svd;

  /** Factors a window that is offered at a band. */
  WindowFit(WindowData data, PairedUnits paired, int band, WindowShape shape) {
    this.data = data;
    this.paired = paired;
    this.band = band;
    this.shape = shape;
    this.window = StackedWindow.of(data, band, shape).orElseThrow();
    this.svd = window.factor();
  }

  /** The shape. */
  WindowShape shape() {
    return shape;
  }

  /** The rule at a penalty {@code κ}. */
  WindowRule rule(double kappa) {
    double lambda = kappa * window.scale();
    double[] beta = svd.ridge(window.differences(), lambda);
    List<Integer> inside = new ArrayList<>();
    List<WindowRule.Predictor> predictors = new ArrayList<>();
    for (int k = 0; k < beta.length; k++) {
      int c = band + (k - shape.half()) * data.step();
      if (data.predicts(c)) {
        inside.add(k);
        predictors.add(new WindowRule.Predictor(c, beta[k], window.centre(k)));
      }
    }
    return new WindowRule(
        WindowShape.octaves(shape.half(), data.perOctave()),
        WindowShape.octaves(shape.pooled(), data.perOctave()),
        kappa,
        window.meanDb(),
        predictors,
        spread(svd, lambda, inside),
        seatingVariance(data, paired, band, predictors));
  }

  private static List<Double> spread(ThinSvd svd, double lambda, List<Integer> inside) {
    List<Double> spread = new ArrayList<>();
    for (int r = 0; r < inside.size(); r++) {
      for (int s = 0; s <= r; s++) {
        double sum = 0;
        for (int k = 0; k < svd.columns(); k++) {
          double size = svd.sigma(k) * svd.sigma(k) + lambda;
          // Where nothing scatters there is no penalty either, and no direction to lie outside of.
          sum += size == 0 ? 0 : svd.v(inside.get(r), k) * svd.v(inside.get(s), k) / size;
        }
        spread.add(sum);
      }
    }
    return spread;
  }

  /** {@code cᵀ S_A c} with {@code c = e_b + β}. */
  static OptionalDouble seatingVariance(
      WindowData data, PairedUnits paired, int band, List<WindowRule.Predictor> predictors) {
    int[] bands = predictors.stream().mapToInt(WindowRule.Predictor::band).toArray();
    double[] weights = predictors.stream().mapToDouble(WindowRule.Predictor::coefficient).toArray();
    for (int k = 0; k < bands.length; k++) {
      weights[k] += bands[k] == band ? 1 : 0;
    }
    return paired.from().seatingVariance(data.members(band), bands, weights);
  }
}
