package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.internal.Parallel;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/**
 * How single units of a kind are predicted, and how far the prediction misses units left out.
 *
 * <p>Per band the rule, nothing where the offset predicts alone; for each unit the offset's errors,
 * and those of the whole choice made without it.
 */
record UnitPrediction(
    List<Optional<WindowRule>> rules, List<Levels> offsetErrors, List<Levels> errors) {

  /**
   * Chooses and judges the rule of every band; bands with fewer than the least units have no
   * estimate.
   */
  static UnitPrediction of(PairedUnits paired, int leastUnits, PredictionModel model, int threads) {
    WindowData data = WindowData.of(paired);
    List<Candidate> candidates =
        model == PredictionModel.OFFSET ? List.of() : Candidate.all(data.perOctave());
    List<Optional<BandErrors>> bands =
        Parallel.map(
            IntStream.range(0, data.bands()).boxed().toList(),
            threads,
            b ->
                data.members(b).length < leastUnits
                    ? Optional.empty()
                    : Optional.of(BandErrors.of(data, b, candidates)));
    int[][] offsets = new int[data.bands()][data.units()];
    for (int[] row : offsets) {
      Arrays.fill(row, ModelChoice.OFFSET);
    }
    if (model == PredictionModel.AVERAGE) {
      ModelAverage average = new ModelAverage(data, bands, candidates);
      return new UnitPrediction(
          average.rules(paired),
          curves(paired, errors(data, bands, offsets)),
          curves(paired, average.errors()));
    }
    ModelChoice choice = new ModelChoice(data, bands, candidates, model, threads);
    int[] chosen = choice.chosen();
    List<Optional<WindowRule>> rules = new ArrayList<>();
    for (int b = 0; b < data.bands(); b++) {
      rules.add(
          chosen[b] == ModelChoice.OFFSET
              ? Optional.empty()
              : Optional.of(rule(data, paired, b, candidates.get(chosen[b]))));
    }
    return new UnitPrediction(
        rules,
        curves(paired, errors(data, bands, offsets)),
        curves(paired, errors(data, bands, choice.nested())));
  }

  private static WindowRule rule(
      WindowData data, PairedUnits paired, int band, Candidate candidate) {
    return new WindowFit(data, paired, band, candidate.shape()).rule(candidate.kappa());
  }

  /** {@code [band][unit]}: the error under the rule that stands for the unit; NaN where none. */
  private static double[][] errors(
      WindowData data, List<Optional<BandErrors>> bands, int[][] rule) {
    double[][] errors = new double[bands.size()][data.units()];
    for (int b = 0; b < errors.length; b++) {
      for (int i = 0; i < data.units(); i++) {
        errors[b][i] =
            bands.get(b).isEmpty() ? Double.NaN : bands.get(b).get().rule(rule[b][i]).errors()[i];
      }
    }
    return errors;
  }

  private static List<Levels> curves(PairedUnits paired, double[][] errors) {
    List<Levels> curves = new ArrayList<>();
    for (int i = 0; i < paired.units().size(); i++) {
      double[] curve = new double[errors.length];
      for (int b = 0; b < curve.length; b++) {
        curve[b] = errors[b][i];
      }
      curves.add(Levels.copyOf(paired.grid(), curve));
    }
    return curves;
  }

  /** The prediction at a band with an estimate, from {@code t_{n-1}}. */
  BandOutcome.Prediction at(int band, double quantile) {
    double looRms = rms(errors, band);
    return new BandOutcome.Prediction(
        rules.get(band), quantile * looRms, rms(offsetErrors, band), looRms);
  }

  private static double rms(List<Levels> curves, int band) {
    return LeaveOneUnitOut.rms(
        curves.stream().filter(c -> c.has(band)).mapToDouble(c -> c.db(band)).toArray());
  }
}
