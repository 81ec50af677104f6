package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.twinrig.internal.Checks;
import org.twinrig.response.Levels;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;

/**
 * Estimates the transfer of one kind over all its bands: mean with pointwise and simultaneous
 * interval, and the prediction of one unit.
 *
 * <p>The simultaneous half-width is {@code min(q, t_{n-1, 1-α/(2·bands)})·SE}, with {@code q} from
 * {@link SignFlipInterval} and {@code bands} the number of bands that have an estimate; it is never
 * below the pointwise one, and with fewer sign patterns than {@code 1/α} Bonferroni's quantile
 * stands alone.
 *
 * <p>The prediction half-width for a graph averaged over {@code m} seatings is {@code
 * t_{n-1}·√(loo_rms² + s2_A·max(0, 1/m - 1/ñ_A))}; an outcome carries it for {@code m = ñ_A}.
 */
public final class TransferEstimator {
  private static final int LEAST_UNITS = 3;

  private final double confidence;
  private final long seed;

  private TransferEstimator(double confidence, long seed) {
    this.confidence = confidence;
    this.seed = seed;
  }

  /**
   * The procedure at 95 % confidence, seed 1.
   *
   * @return the procedure
   */
  public static TransferEstimator withDefaults() {
    return new TransferEstimator(0.95, 1);
  }

  /**
   * The same procedure at another confidence.
   *
   * @param level strictly between 0 and 1
   * @return the procedure
   */
  public TransferEstimator withConfidence(double level) {
    return new TransferEstimator(Checks.fraction(level, "confidence"), seed);
  }

  /**
   * The same procedure with another seed for the drawn sign patterns.
   *
   * @param value any
   * @return the procedure
   */
  public TransferEstimator withSeed(long value) {
    return new TransferEstimator(confidence, value);
  }

  /**
   * Estimates one kind.
   *
   * @param paired its units on both fixtures
   * @return one outcome per band
   */
  public KindEstimate fit(PairedUnits paired) {
    int bands = paired.grid().size();
    int units = paired.units().size();
    List<BandSample> samples = new ArrayList<>(bands);
    double[][] differences = missing(units, bands);
    double[][] errors = missing(units, bands);
    for (int b = 0; b < bands; b++) {
      BandSample sample = paired.at(b);
      samples.add(sample);
      if (sample.size() >= LEAST_UNITS) {
        scatter(sample.differencesDb(), sample.members(), differences, b);
        scatter(LeaveOneUnitOut.errors(sample.differencesDb()), sample.members(), errors, b);
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
    List<BandOutcome> outcomes = new ArrayList<>(bands);
    for (int b = 0; b < bands; b++) {
      outcomes.add(outcome(paired, b, samples.get(b), simultaneous, fitted));
    }
    List<Levels> errorCurves =
        Arrays.stream(errors).map(row -> Levels.copyOf(paired.grid(), row)).toList();
    return new KindEstimate(
        paired.kind(),
        paired.grid(),
        paired.units(),
        outcomes,
        simultaneous,
        errorCurves,
        errorCurves);
  }

  private BandOutcome outcome(
      PairedUnits paired,
      int b,
      BandSample sample,
      SignFlipInterval.Result simultaneous,
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
    double looRms = LeaveOneUnitOut.rms(LeaveOneUnitOut.errors(sample.differencesDb()));
    return new BandOutcome.Fitted(
        paired.grid().band(b),
        mean,
        multiplier(simultaneous, pointwise, bonferroni) * mean.standardErrorDb(),
        new BandOutcome.Prediction(BandOutcome.Model.OFFSET, pointwise * looRms, looRms, looRms),
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

  private static void scatter(double[] values, int[] rows, double[][] into, int column) {
    for (int k = 0; k < values.length; k++) {
      into[rows[k]][column] = values[k];
    }
  }
}
