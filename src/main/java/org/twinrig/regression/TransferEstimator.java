package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Parallel;
import org.twinrig.response.Levels;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/**
 * Estimates the transfer of one kind over all its bands: mean with pointwise and simultaneous
 * interval, and the prediction of one unit.
 *
 * <p>Means and their intervals are those of {@link MeanCurve}.
 *
 * <p>A unit is predicted by {@link ModelAverage}, or by the offset alone; its errors {@code r̃_i}
 * are those of weights found without the unit, and {@code loo_rms = √mean(r̃_i²)}. The prediction
 * half-width for a graph averaged over {@code m} seatings is {@code t_ν·√(s² + cᵀ S_A c·max(0, 1/m
 * - 1/ñ_A))} with {@code s²} and {@code ν} from {@link ErrorVariance}; an outcome carries it for
 * {@code m = ñ_A}.
 */
public record TransferEstimator(double confidence, PredictionModel model, int threads) {

  public TransferEstimator {
    Checks.fraction(confidence, "confidence");
  }

  /** Estimates one kind, one outcome per band. */
  public KindEstimate fit(PairedUnits paired) {
    int perOctave = paired.grid().perOctave();
    List<Integer> bands = IntStream.range(0, paired.grid().size()).boxed().toList();
    List<BandSample> samples = bands.stream().map(paired::at).toList();
    List<Optional<MeanCurve.Mean>> means =
        new MeanCurve(confidence).fit(samples.stream().map(UnitSample::of).toList(), perOctave);
    WindowData data = WindowData.of(paired);
    List<WindowShape> shapes =
        model == PredictionModel.OFFSET ? List.of() : WindowShape.all(perOctave);
    List<Optional<BandErrors>> without =
        Parallel.map(bands, threads, b -> means.get(b).map(m -> BandErrors.of(data, b, shapes)));
    ModelAverage average = new ModelAverage(data, without, shapes);
    double[][] offsets = average.offsetErrors();
    List<ModelAverage.AtBand> averaged = Parallel.map(bands, threads, b -> average.at(b, paired));
    double[][] errors = averaged.stream().map(ModelAverage.AtBand::errors).toArray(double[][]::new);
    Variances ofOffset = Variances.of(offsets, perOctave);
    Variances inForce = Variances.of(errors, perOctave);
    List<Optional<BandOutcome.UnitSpread>> spreads = unitSpreads(data, without);
    List<BandOutcome> outcomes =
        bands.stream()
            .map(
                b ->
                    means.get(b).isEmpty()
                        ? notFitted(paired.grid().band(b), samples.get(b).size())
                        : new BandOutcome.Fitted(
                            paired.grid().band(b),
                            means.get(b).get().estimate(),
                            means.get(b).get().simultaneousHalfDb(),
                            prediction(averaged.get(b).rule(), ofOffset.at(b), inForce.at(b)),
                            scatter(samples.get(b)),
                            spreads.get(b).orElseThrow()))
            .toList();
    return new KindEstimate(
        paired.kind(),
        paired.grid(),
        paired.units(),
        outcomes,
        curves(paired, offsets),
        curves(paired, errors));
  }

  private static BandOutcome notFitted(Band band, int units) {
    return new BandOutcome.NotFitted(
        band, units, units == 0 ? BandOutcome.Why.NO_DATA : BandOutcome.Why.FEWER_THAN_THREE_UNITS);
  }

  private BandOutcome.Prediction prediction(
      Optional<WindowRule> rule, BandOutcome.Errors offset, BandOutcome.Errors inForce) {
    double t = StudentT.twoSided(confidence, inForce.degreesOfFreedom());
    return new BandOutcome.Prediction(rule, t * Math.sqrt(inForce.varianceDb2()), offset, inForce);
  }

  private static BandOutcome.Scatter scatter(BandSample sample) {
    return new BandOutcome.Scatter(
        Arrays.stream(sample.variances()).average().orElseThrow(),
        sample.from().variance(),
        sample.to().variance(),
        sample.from().harmonicMean());
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
        Neighbourhood.of(means.length, b -> bands.get(b).isPresent(), data.perOctave() / 6);
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
      Neighbourhood third = Neighbourhood.of(errors.length, b -> units[b] > 0, perOctave / 3);
      double[] whole = new double[errors.length];
      Arrays.setAll(whole, b -> third.mean(b, meanSquares));
      return new Variances(
          meanSquares, new ErrorVariance.Bands(units, perOctave).of(meanSquares), whole);
    }

    BandOutcome.Errors at(int band) {
      return new BandOutcome.Errors(
          Math.sqrt(meanSquares[band]),
          pointwise.variance(band),
          pointwise.degreesOfFreedom(band),
          whole[band]);
    }
  }
}
