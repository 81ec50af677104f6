package org.twinrig.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.study.PairedUnits;

/**
 * Predicts a unit by all windows and the offset together, each weighted by how well it does on
 * units left out.
 *
 * <p>At a band with {@code n} units, {@code w_c ∝ π_c·exp(-n/2·L_c)} with {@code L_c} the mean of
 * {@code ln MSE} of the leave-one-unit-out errors over the bands within 1/6 octave. The offset has
 * the prior weight {@code π = 0.7}, the windows offered share the rest: a window has to bring
 * evidence before it moves a prediction. Weights below 1e-9 are dropped and the others rescaled.
 * The error on a unit is the same mean of the errors, its weights found without the unit, from
 * errors with two units left out. Since each window is linear in the old levels, so is their mean:
 * one set of coefficients is applied.
 *
 * <p>A choice of one rule jumps when a unit is added, or from one band to the next; a mean moves
 * little.
 *
 * <p>Source: Yao, Vehtari, Simpson and Gelman 2018, Bayesian Analysis 13:917, section 3.2 (weights
 * from left-out predictive densities; here normal, with the variance at its estimate).
 */
final class ModelAverage {
  private static final double PRIOR_OF_OFFSET = 0.7;
  private static final double LEAST_WEIGHT = 1e-9;

  private final WindowData data;
  private final List<Optional<BandErrors>> bands;
  private final List<WindowShape> shapes;

  /** How many windows there are, each a shape with a penalty; the number of the offset. */
  private final int offset;

  private final Neighbourhood neighbourhood;

  ModelAverage(WindowData data, List<Optional<BandErrors>> bands, List<WindowShape> shapes) {
    this.data = data;
    this.bands = bands;
    this.shapes = shapes;
    this.offset = shapes.size() * WindowShape.KAPPAS.size();
    this.neighbourhood =
        Neighbourhood.of(data.bands(), b -> bands.get(b).isPresent(), data.perOctave() / 6);
  }

  /** {@code [band][unit]}: the error on each unit of the offset alone; NaN where none. */
  double[][] offsetErrors() {
    double[] none = new double[data.units()];
    Arrays.fill(none, Double.NaN);
    return bands.stream()
        .map(band -> band.map(e -> e.offset().errors()).orElse(none))
        .toArray(double[][]::new);
  }

  /**
   * What the mean says at a band.
   *
   * @param errors on each unit, its weights found without it; NaN where none
   * @param rule nothing where the offset has all the weight
   */
  @SuppressWarnings("ArrayRecordComponent") // stays in this package
  record AtBand(double[] errors, Optional<WindowRule> rule) {}

  /** The errors on units left out and the rule of a band. */
  AtBand at(int b, PairedUnits paired) {
    double[] errors = new double[data.units()];
    Arrays.fill(errors, Double.NaN);
    if (bands.get(b).isEmpty()) {
      return new AtBand(errors, Optional.empty());
    }
    BandErrors band = bands.get(b).get();
    double[][] scores = scores(b);
    for (int unit : data.members(b)) {
      errors[unit] = error(band, unit, weights(band, scores[unit], band.members() - 1));
    }
    return new AtBand(errors, rule(paired, b, weights(band, scores[data.units()], band.members())));
  }

  private static double error(BandErrors band, int unit, double[] weights) {
    double ofOffset = band.offset().errors()[unit];
    double error = ofOffset;
    for (int c = 0; c < weights.length; c++) {
      if (weights[c] > 0) {
        error += weights[c] * (band.rule(c).errors()[unit] - ofOffset);
      }
    }
    return error;
  }

  private Optional<WindowRule> rule(PairedUnits paired, int b, double[] weights) {
    WeightedWindows windows = new WeightedWindows(data, b);
    int kappas = WindowShape.KAPPAS.size();
    for (int s = 0; s < shapes.size(); s++) {
      StackedWindow fit = null;
      for (int k = 0; k < kappas; k++) {
        if (weights[s * kappas + k] > 0) {
          fit = fit == null ? StackedWindow.of(data, b, shapes.get(s)).orElseThrow() : fit;
          windows.add(weights[s * kappas + k], fit, WindowShape.KAPPAS.get(k));
        }
      }
    }
    return windows.rule(paired);
  }

  /**
   * {@code L_c} at a band: one row per unit left out, the last row without leaving out any; one
   * column per candidate, the offset's last.
   */
  private double[][] scores(int b) {
    int units = data.units();
    double[][] scores = new double[units + 1][offset + 1];
    int[] around = neighbourhood.of(b);
    for (int c = 0; c <= offset; c++) {
      for (int k : around) {
        BandErrors.Rule rule = bands.get(k).orElseThrow().rule(c);
        double[] without = rule.logMseWithout();
        for (int i = 0; i < units; i++) {
          scores[i][c] += without[i] / around.length;
        }
        scores[units][c] += rule.logMse() / around.length;
      }
    }
    return scores;
  }

  /** Weight of each candidate, 0 where it is not offered or too light; the offset has the rest. */
  private double[] weights(BandErrors band, double[] scores, int units) {
    double[] weights = new double[offset];
    double least = scores[offset];
    int offered = 0;
    for (int c = 0; c < offset; c++) {
      if (band.offers(c)) {
        least = Math.min(least, scores[c]);
        offered++;
      }
    }
    double half = units / 2.0;
    double ofOffset = PRIOR_OF_OFFSET * Math.exp(-half * (scores[offset] - least));
    double sum = ofOffset;
    for (int c = 0; c < offset; c++) {
      if (band.offers(c)) {
        weights[c] = (1 - PRIOR_OF_OFFSET) / offered * Math.exp(-half * (scores[c] - least));
        sum += weights[c];
      }
    }
    double kept = ofOffset;
    for (int c = 0; c < offset; c++) {
      weights[c] = weights[c] < LEAST_WEIGHT * sum ? 0 : weights[c];
      kept += weights[c];
    }
    for (int c = 0; c < offset; c++) {
      weights[c] /= kept;
    }
    return weights;
  }
}
