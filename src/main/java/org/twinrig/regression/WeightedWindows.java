package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.study.PairedUnits;

/**
 * The weighted mean of windows at one band, as one rule: coefficients are weighted sums, the spread
 * of the fit is a weighted mean. What the weights lack of 1 is the offset's.
 */
final class WeightedWindows {
  private final WindowData data;
  private final int band;

  /** Widest half-width of any window in steps of the grid: sums run over {@code -most..most}. */
  private final int most;

  private final double[] coefficients;
  private final double[] centres;
  private final double[][] spread;
  private double total;
  private int reach = -1;

  WeightedWindows(WindowData data, int band) {
    this.data = data;
    this.band = band;
    this.most =
        WindowShape.all(data.perOctave()).stream().mapToInt(WindowShape::half).max().orElseThrow();
    this.coefficients = new double[2 * most + 1];
    this.centres = new double[2 * most + 1];
    this.spread = new double[2 * most + 1][2 * most + 1];
  }

  /** Adds a window at a penalty. */
  void add(double weight, StackedWindow fit, double kappa) {
    double lambda = kappa * fit.scale();
    double[] beta = fit.coefficients(lambda);
    int half = beta.length / 2;
    int shift = most - half;
    for (int r = 0; r < beta.length; r++) {
      coefficients[r + shift] += weight * beta[r];
      centres[r + shift] = fit.centre(r);
      for (int s = 0; s <= r; s++) {
        spread[r + shift][s + shift] += weight * fit.spread(r, s, lambda);
      }
    }
    total += weight;
    reach = Math.max(reach, half);
  }

  /** The rule; nothing where no window was added. */
  Optional<WindowRule> rule(PairedUnits paired) {
    if (total == 0) {
      return Optional.empty();
    }
    int[] inside =
        IntStream.rangeClosed(most - reach, most + reach)
            .filter(k -> data.predicts(bandOf(k)))
            .toArray();
    List<WindowRule.Predictor> predictors = new ArrayList<>();
    List<Double> triangle = new ArrayList<>();
    for (int r = 0; r < inside.length; r++) {
      int k = inside[r];
      predictors.add(new WindowRule.Predictor(bandOf(k), coefficients[k], centres[k]));
      for (int s = 0; s <= r; s++) {
        triangle.add(spread[k][inside[s]] / total);
      }
    }
    double mean =
        Arrays.stream(data.members(band))
            .mapToDouble(i -> data.difference(band, i))
            .average()
            .orElseThrow();
    return Optional.of(
        new WindowRule(
            Math.max(0, 1 - total),
            mean,
            predictors,
            triangle,
            seatingVariance(paired, predictors)));
  }

  private int bandOf(int k) {
    return band + (k - most) * data.step();
  }

  /** {@code cᵀ S_A c} with {@code c = e_b + β}. */
  private OptionalDouble seatingVariance(
      PairedUnits paired, List<WindowRule.Predictor> predictors) {
    int[] bands = predictors.stream().mapToInt(WindowRule.Predictor::band).toArray();
    double[] weights = predictors.stream().mapToDouble(WindowRule.Predictor::coefficient).toArray();
    for (int k = 0; k < bands.length; k++) {
      weights[k] += bands[k] == band ? 1 : 0;
    }
    return paired.from().seatingVariance(data.members(band), bands, weights);
  }
}
