package org.twinrig.regression;

import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;
import org.twinrig.response.Levels;

/**
 * The weighted mean of window ridges at one band: what a unit's old graph around the band says
 * about how far the unit's level differs between the fixtures, {@code d̄ + Σ_c β_c (x(c) - x̄(c))}.
 *
 * @param offsetWeight how much of the mean is the plain offset, 0 to 1
 * @param meanDb mean difference of the units it was fitted on, {@code d̄}, dB: the rule's own
 *     intercept, with which its errors were judged
 * @param predictors the bands of the window that lie in the grid, rising
 * @param spread lower triangle, row after row, of {@code (WᵀW+λI)⁻¹} over the predictors, 1/dB²
 * @param seatingVariance {@code cᵀ S_A c} in dB², the variance that one seating on the old fixture
 *     brings into the predicted level, {@code c = e_b + β}; nothing when no unit was seated twice
 */
public record WindowRule(
    double offsetWeight,
    double meanDb,
    List<Predictor> predictors,
    List<Double> spread,
    OptionalDouble seatingVariance) {

  public WindowRule {
    if (!(offsetWeight >= 0 && offsetWeight <= 1)) {
      throw new IllegalArgumentException("offset_weight must be 0 to 1, but is " + offsetWeight);
    }
    Checks.finite(meanDb, "mean_db");
    predictors = List.copyOf(predictors);
    spread = List.copyOf(spread);
    spread.forEach(element -> Checks.finite(element, "an element of the window's spread"));
    seatingVariance.ifPresent(v -> Checks.notNegative(v, "a seating variance in dB²"));
    if (predictors.isEmpty() || spread.size() != predictors.size() * (predictors.size() + 1) / 2) {
      throw new IllegalArgumentException("one row of the spread is needed for each predictor");
    }
    for (int k = 1; k < predictors.size(); k++) {
      if (predictors.get(k).band() <= predictors.get(k - 1).band()) {
        throw new IllegalArgumentException("the predictors of a window must rise");
      }
    }
  }

  /**
   * A band that predicts: its position in the grid, {@code β_c} in dB per dB, and the mean level of
   * the study's units there on the old fixture, {@code x̄(c)}, dB.
   */
  public record Predictor(int band, double coefficient, double centreDb) {
    public Predictor {
      Checks.finite(coefficient, "a coefficient");
      Checks.finite(centreDb, "a mean level in dB");
    }
  }

  /**
   * How far the new fixture's level lies above the old one's for a graph, {@code d̄ + Σ_c β_c (x(c)
   * - x̄(c))}, dB. A band of the window that the graph lacks counts as like the study's mean, so
   * that what the window says fades out towards a graph's end, band by band.
   */
  public double shiftDb(Levels old) {
    double shift = meanDb;
    for (Predictor p : predictors) {
      if (old.has(p.band())) {
        shift += p.coefficient() * (old.db(p.band()) - p.centreDb());
      }
    }
    return shift;
  }

  /** Whether a graph has all bands of the window. */
  public boolean covers(Levels old) {
    return predictors.stream().allMatch(p -> old.has(p.band()));
  }

  /**
   * A vector over the predictors spread by the window: {@code (WᵀW+λI)⁻¹·w}, 1/dB. Two graphs
   * {@code w} and {@code v}, levels less {@link Predictor#centreDb}, share the error {@code
   * wᵀ(WᵀW+λI)⁻¹v} of the coefficients, in units of the residual variance.
   */
  public double[] spread(double[] centred) {
    if (centred.length != predictors.size()) {
      throw new IllegalArgumentException("one level per predictor is needed");
    }
    return times(spread, centred);
  }

  /**
   * How far a graph with a level at every band of the window lies from the {@code n} units the rule
   * was fitted on: {@code 1/n + wᵀ(WᵀW+λI)⁻¹w} with {@code w = x - x̄}. For a unit of the fit it
   * stays below 1; above, the graph lies outside what the study's units span. It is infinite where
   * the spread is none, because then nothing says that the graph is like the units.
   */
  public double leverage(Levels old, int units) {
    double[] centred = new double[predictors.size()];
    for (int k = 0; k < centred.length; k++) {
      centred[k] = old.db(predictors.get(k).band()) - predictors.get(k).centreDb();
    }
    double[] spread = spread(centred);
    double sum = 0;
    double size = 0;
    for (int k = 0; k < centred.length; k++) {
      sum += centred[k] * spread[k];
      size += Math.abs(centred[k] * spread[k]);
    }
    boolean rounding = sum >= -1e-9 * Math.max(1, size);
    return rounding ? 1.0 / units + Math.max(0, sum) : Double.POSITIVE_INFINITY;
  }

  /** {@code M·v}, with the lower triangle of the symmetric {@code M}, row after row. */
  private static double[] times(List<Double> lowerTriangle, double[] vector) {
    double[] product = new double[vector.length];
    int element = 0;
    for (int r = 0; r < vector.length; r++) {
      for (int s = 0; s <= r; s++) {
        double m = lowerTriangle.get(element++);
        product[r] += m * vector[s];
        if (r != s) {
          product[s] += m * vector[r];
        }
      }
    }
    return product;
  }
}
