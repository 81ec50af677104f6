package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
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
 *
 * @param confidence strictly between 0 and 1
 * @param model how a unit is predicted
 * @param threads 1 or more; the outcome does not depend on it
 */
public record TransferEstimator(double confidence, PredictionModel model, int threads) {

  public TransferEstimator {
    Checks.fraction(confidence, "confidence");
  }

  /** Estimates one kind, one outcome per band. */
  public KindEstimate fit(PairedUnits paired) {
    int bands = paired.grid().size();
    List<BandSample> samples = IntStream.range(0, bands).mapToObj(paired::at).toList();
    List<Optional<MeanCurve.Mean>> means =
        new MeanCurve(confidence)
            .fit(samples.stream().map(UnitSample::of).toList(), paired.grid().perOctave());
    UnitPrediction prediction = UnitPrediction.of(paired, MeanCurve.LEAST_UNITS, model, threads);
    List<BandOutcome> outcomes = new ArrayList<>(bands);
    for (int b = 0; b < bands; b++) {
      outcomes.add(outcome(paired.grid().band(b), b, samples.get(b), means.get(b), prediction));
    }
    return new KindEstimate(
        paired.kind(),
        paired.grid(),
        paired.units(),
        outcomes,
        prediction.offsetErrors(),
        prediction.errors());
  }

  private BandOutcome outcome(
      Band band,
      int b,
      BandSample sample,
      Optional<MeanCurve.Mean> mean,
      UnitPrediction predictions) {
    int n = sample.size();
    if (mean.isEmpty()) {
      return new BandOutcome.NotFitted(
          band, n, n == 0 ? BandOutcome.Why.NO_DATA : BandOutcome.Why.FEWER_THAN_THREE_UNITS);
    }
    return new BandOutcome.Fitted(
        band,
        mean.get().estimate(),
        mean.get().simultaneousHalfDb(),
        predictions.at(b, confidence),
        new BandOutcome.Scatter(
            Arrays.stream(sample.variances()).average().orElseThrow(),
            sample.from().variance(),
            sample.to().variance(),
            sample.from().harmonicMean()),
        predictions.unitSpreads().get(b).orElseThrow());
  }
}
