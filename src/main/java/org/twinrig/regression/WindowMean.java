package org.twinrig.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;

/** The weighted mean of windows at one band, as one window; what is left of 1 is the offset's. */
final class WindowMean {
  private WindowMean() {}

  /** A window and its weight. */
  record Weighted(double weight, WindowRule rule) {}

  /**
   * The mean of one or more windows: coefficients are weighted sums; leverages, window, pooling and
   * the logarithm of the penalty are weighted means.
   *
   * @param offsetDb mean difference of the units, which has the weight that is left, dB
   * @param seatingVariance {@code cᵀ S_A c} of the mean's predictors
   */
  static WindowRule of(
      List<Weighted> windows,
      double offsetDb,
      Function<List<WindowRule.Predictor>, OptionalDouble> seatingVariance) {
    TreeMap<Integer, WindowRule.Predictor> byBand = new TreeMap<>();
    double total = 0;
    double half = 0;
    double pooled = 0;
    double logShrinkage = 0;
    double mean = 0;
    for (Weighted w : windows) {
      total += w.weight;
      mean += w.weight * w.rule.meanDb();
      half += w.weight * w.rule.halfOctaves();
      pooled += w.weight * w.rule.pooledOctaves();
      logShrinkage += w.weight * Math.log(w.rule.shrinkage());
      for (WindowRule.Predictor p : w.rule.predictors()) {
        byBand.merge(
            p.band(),
            new WindowRule.Predictor(p.band(), w.weight * p.coefficient(), p.centreDb()),
            (a, b) ->
                new WindowRule.Predictor(
                    a.band(), a.coefficient() + b.coefficient(), a.centreDb()));
      }
    }
    List<WindowRule.Predictor> predictors = List.copyOf(byBand.values());
    return new WindowRule(
        half / total,
        pooled / total,
        Math.exp(logShrinkage / total),
        mean + (1 - total) * offsetDb,
        predictors,
        spread(windows, total, List.copyOf(byBand.keySet())),
        seatingVariance.apply(predictors));
  }

  private static List<Double> spread(List<Weighted> windows, double total, List<Integer> bands) {
    double[][] sum = new double[bands.size()][bands.size()];
    for (Weighted w : windows) {
      int element = 0;
      List<WindowRule.Predictor> own = w.rule.predictors();
      for (int r = 0; r < own.size(); r++) {
        for (int s = 0; s <= r; s++) {
          sum[bands.indexOf(own.get(r).band())][bands.indexOf(own.get(s).band())] +=
              w.weight / total * w.rule.spread().get(element++);
        }
      }
    }
    List<Double> triangle = new ArrayList<>();
    for (int r = 0; r < bands.size(); r++) {
      for (int s = 0; s <= r; s++) {
        triangle.add(sum[r][s]);
      }
    }
    return triangle;
  }
}
