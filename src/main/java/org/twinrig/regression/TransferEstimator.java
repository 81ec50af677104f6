package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.internal.Checks;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/**
 * Estimates the transfer of one kind over all its bands: mean with pointwise and simultaneous
 * interval, and the prediction of one unit.
 *
 * <p>The simultaneous half-width is {@code min(q, t_{n-1, 1-α/(2·bands)})·SE}, with {@code q} from
 * {@link SignFlipInterval} and {@code bands} the number of bands that have an estimate; it is never
 * below the pointwise one, and with fewer sign patterns than {@code 1/α} Bonferroni's quantile
 * stands alone.
 *
 * <p>A unit is predicted band by band by the offset alone or by a window ridge, whichever {@link
 * ModelChoice} finds; its errors {@code r̃_i} are those of the whole choice made anew without the
 * unit, and {@code loo_rms = √mean(r̃_i²)}. The prediction half-width for a graph averaged over
 * {@code m} seatings is {@code t_{n-1}·√(loo_rms² + cᵀ S_A c·max(0, 1/m - 1/ñ_A))}; an outcome
 * carries it for {@code m = ñ_A}.
 */
public final class TransferEstimator {
  private static final int LEAST_UNITS = 3;

  private final double confidence;
  private final long seed;
  private final PredictionModel model;
  private final int threads;

  private TransferEstimator(double confidence, long seed, PredictionModel model, int threads) {
    this.confidence = confidence;
    this.seed = seed;
    this.model = model;
    this.threads = threads;
  }

  /**
   * The procedure at 95 % confidence, seed 1, choosing its model, on one thread.
   *
   * @return the procedure
   */
  public static TransferEstimator withDefaults() {
    return new TransferEstimator(0.95, 1, PredictionModel.AUTO, 1);
  }

  /**
   * The same procedure at another confidence.
   *
   * @param level strictly between 0 and 1
   * @return the procedure
   */
  public TransferEstimator withConfidence(double level) {
    return new TransferEstimator(Checks.fraction(level, "confidence"), seed, model, threads);
  }

  /**
   * The same procedure with another seed for the drawn sign patterns.
   *
   * @param value any
   * @return the procedure
   */
  public TransferEstimator withSeed(long value) {
    return new TransferEstimator(confidence, value, model, threads);
  }

  /**
   * The same procedure with another way to predict a unit.
   *
   * @param value the way
   * @return the procedure
   */
  public TransferEstimator withModel(PredictionModel value) {
    return new TransferEstimator(confidence, seed, value, threads);
  }

  /**
   * The same procedure on more threads, with the same outcome.
   *
   * @param value 1 or more
   * @return the procedure
   */
  public TransferEstimator withThreads(int value) {
    return new TransferEstimator(confidence, seed, model, value);
  }

  /**
   * Estimates one kind.
   *
   * @param paired its units on both fixtures
   * @return one outcome per band
   */
  public KindEstimate fit(PairedUnits paired) {
    int bands = paired.grid().size();
    List<BandSample> samples = IntStream.range(0, bands).mapToObj(paired::at).toList();
    double[][] differences = missing(paired.units().size(), bands);
    for (int b = 0; b < bands; b++) {
      if (samples.get(b).size() >= LEAST_UNITS) {
        scatter(samples.get(b), differences, b);
      }
    }
    long fitted = samples.stream().filter(s -> s.size() >= LEAST_UNITS).count();
    SignFlipInterval.Result simultaneous =
        fitted == 0
            ? new SignFlipInterval.Result(0, 0, true)
            : SignFlipInterval.withDefaults()
                .withConfidence(confidence)
                .withSeed(seed)
                .fit(differences);
    UnitPrediction prediction = UnitPrediction.of(paired, LEAST_UNITS, model, threads);
    List<BandOutcome> outcomes = new ArrayList<>(bands);
    for (int b = 0; b < bands; b++) {
      outcomes.add(outcome(paired, b, samples.get(b), simultaneous, prediction, fitted));
    }
    return new KindEstimate(
        paired.kind(),
        paired.grid(),
        paired.units(),
        outcomes,
        simultaneous,
        prediction.offsetErrors(),
        prediction.errors());
  }

  private BandOutcome outcome(
      PairedUnits paired,
      int b,
      BandSample sample,
      SignFlipInterval.Result simultaneous,
      UnitPrediction predictions,
      long fittedBands) {
    int n = sample.size();
    if (n < LEAST_UNITS) {
      return new BandOutcome.NotFitted(
          paired.grid().band(b),
          n,
          n == 0 ? BandOutcome.Why.NO_DATA : BandOutcome.Why.FEWER_THAN_THREE_UNITS);
    }
    RandomEffects.Result mean =
        RandomEffects.withDefaults()
            .withConfidence(confidence)
            .fit(sample.differencesDb(), sample.variances());
    double pointwise = StudentT.twoSided(confidence, n - 1);
    double bonferroni = StudentT.twoSided(1 - (1 - confidence) / fittedBands, n - 1);
    return new BandOutcome.Fitted(
        paired.grid().band(b),
        mean,
        multiplier(simultaneous, pointwise, bonferroni) * mean.standardErrorDb(),
        predictions.at(b, pointwise),
        new BandOutcome.Scatter(
            Arrays.stream(sample.variances()).average().orElseThrow(),
            sample.from().variance(),
            sample.to().variance(),
            sample.from().harmonicMean()));
  }

  /**
   * Never below the pointwise quantile. With fewer sign patterns than 1/α (five units or fewer at
   * 95 %) no pattern is rare enough for the quantile to exist, and Bonferroni's stands alone.
   */
  private double multiplier(
      SignFlipInterval.Result simultaneous, double pointwise, double bonferroni) {
    boolean enough = simultaneous.patterns() * (1 - confidence) >= 1 - 1e-9;
    double q = enough ? Math.min(simultaneous.multiplier(), bonferroni) : bonferroni;
    return Math.max(pointwise, q);
  }

  private static double[][] missing(int rows, int columns) {
    double[][] values = new double[rows][columns];
    for (double[] row : values) {
      Arrays.fill(row, Double.NaN);
    }
    return values;
  }

  private static void scatter(BandSample sample, double[][] into, int column) {
    for (int k = 0; k < sample.size(); k++) {
      into[sample.members()[k]][column] = sample.differencesDb()[k];
    }
  }
}
