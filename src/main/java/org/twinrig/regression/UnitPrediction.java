package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.internal.Parallel;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/**
 * How single units of a kind are predicted, and how far the prediction misses units left out.
 *
 * @param rules per band, nothing where the offset predicts alone
 * @param offsetErrors for each unit the offset's errors, dB
 * @param errors for each unit those of the model, its weights found without the unit, dB
 * @param offsetVariances what intervals rest on where the offset predicts alone
 * @param variances what intervals rest on
 * @param unitSpreads per band what the units are like, nothing where there is no estimate
 */
record UnitPrediction(
    List<Optional<WindowRule>> rules,
    List<Levels> offsetErrors,
    List<Levels> errors,
    Variances offsetVariances,
    Variances variances,
    List<Optional<BandOutcome.UnitSpread>> unitSpreads) {

  /** Predicts and judges at every band with the least units or more; others have no estimate. */
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
    ModelAverage average = new ModelAverage(data, bands, candidates);
    double[][] offsets = new double[data.bands()][];
    double[] none = new double[data.units()];
    Arrays.fill(none, Double.NaN);
    Arrays.setAll(offsets, b -> bands.get(b).map(e -> e.offset().errors()).orElse(none));
    double[][] errors = average.errors();
    return new UnitPrediction(
        average.rules(paired),
        curves(paired, offsets),
        curves(paired, errors),
        Variances.of(offsets, data.perOctave()),
        Variances.of(errors, data.perOctave()),
        unitSpreads(data, bands));
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

  private static List<Optional<BandOutcome.UnitSpread>> unitSpreads(
      WindowData data, List<Optional<BandErrors>> bands) {
    double[] means = new double[data.bands()];
    double[] variances = new double[data.bands()];
    for (int b = 0; b < means.length; b++) {
      if (bands.get(b).isPresent()) {
        int band = b;
        double[] x = Arrays.stream(data.members(b)).mapToDouble(i -> data.level(band, i)).toArray();
        means[b] = StatUtils.mean(x);
        variances[b] = StatUtils.variance(x);
      }
    }
    Neighbourhood near =
        Neighbourhood.sixthOctave(means.length, b -> bands.get(b).isPresent(), data.perOctave());
    return IntStream.range(0, means.length)
        .mapToObj(
            b ->
                bands
                    .get(b)
                    .map(
                        e ->
                            new BandOutcome.UnitSpread(
                                means[b], Math.sqrt(near.mean(b, variances)), step(data, b))))
        .toList();
  }

  private static double step(WindowData data, int band) {
    return band == 0
        ? 0
        : Arrays.stream(data.members(band))
            .mapToDouble(i -> Math.abs(data.difference(band, i) - data.difference(band - 1, i)))
            .filter(step -> !Double.isNaN(step))
            .max()
            .orElse(0);
  }

  /** The prediction at a band with an estimate. */
  BandOutcome.Prediction at(int band, double confidence) {
    BandOutcome.Errors inForce = variances.at(band);
    double quantile = StudentT.twoSided(confidence, inForce.degreesOfFreedom());
    return new BandOutcome.Prediction(
        rules.get(band),
        quantile * Math.sqrt(inForce.varianceDb2()),
        offsetVariances.at(band),
        inForce);
  }

  /** Mean squares of errors per band, dB², and what intervals make of them. */
  @SuppressWarnings("ArrayRecordComponent") // stays in this package
  record Variances(double[] meanSquares, ErrorVariance pointwise, double[] whole) {
    /** From errors {@code [band][unit]}, NaN where there is none. */
    static Variances of(double[][] errors, int perOctave) {
      int[] units = new int[errors.length];
      double[] meanSquares = new double[errors.length];
      for (int b = 0; b < errors.length; b++) {
        double[] known = Arrays.stream(errors[b]).filter(e -> !Double.isNaN(e)).toArray();
        units[b] = known.length;
        meanSquares[b] = known.length == 0 ? 0 : StatUtils.sumSq(known) / known.length;
      }
      Neighbourhood third = Neighbourhood.thirdOctave(errors.length, b -> units[b] > 0, perOctave);
      double[] whole = new double[errors.length];
      Arrays.setAll(whole, b -> third.mean(b, meanSquares));
      return new Variances(
          meanSquares, new ErrorVariance.Bands(units, perOctave).of(meanSquares), whole);
    }

    BandOutcome.Errors at(int band) {
      return new BandOutcome.Errors(
          Math.sqrt(meanSquares[band]),
          pointwise.variances()[band],
          pointwise.degreesOfFreedom()[band],
          whole[band]);
    }
  }
}
