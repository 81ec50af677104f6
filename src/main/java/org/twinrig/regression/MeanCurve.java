package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.internal.Checks;

/**
 * The means of one quantity over units at many bands, each with an interval of its own and one that
 * holds at all bands at once.
 *
 * <p>Each mean is that of {@link RandomEffects}. The simultaneous half-width is {@code min(q,
 * t_{n-1, 1-α/(2·bands)})·SE}, with {@code q} from {@link SignFlipInterval} and {@code bands} the
 * number of bands that have a mean; it is never below the pointwise one, and with fewer sign
 * patterns than {@code 1/α} Bonferroni's quantile stands alone.
 */
public final class MeanCurve {
  /** Fewer units than this have no mean. */
  static final int LEAST_UNITS = 3;

  private final double confidence;
  private final long seed;

  private MeanCurve(double confidence, long seed) {
    this.confidence = confidence;
    this.seed = seed;
  }

  /** The procedure at 95 % confidence, seed 1. */
  public static MeanCurve withDefaults() {
    return new MeanCurve(0.95, 1);
  }

  /**
   * The same procedure at another confidence.
   *
   * @param level strictly between 0 and 1
   */
  public MeanCurve withConfidence(double level) {
    return new MeanCurve(Checks.fraction(level, "confidence"), seed);
  }

  /**
   * The same procedure with another seed for the drawn sign patterns: quantities with the same
   * units and the same seed are given the same patterns.
   */
  public MeanCurve withSeed(long value) {
    return new MeanCurve(confidence, value);
  }

  /**
   * The means.
   *
   * @param bands one per band; nothing where fewer than three units have a number
   * @param simultaneous how the simultaneous interval was found
   */
  public record Result(List<Optional<Mean>> bands, SignFlipInterval.Result simultaneous) {
    public Result {
      bands = List.copyOf(bands);
    }
  }

  /**
   * A mean.
   *
   * @param estimate with its pointwise interval
   * @param simultaneousHalfDb half-width in dB of the interval that holds at all bands at once
   */
  public record Mean(RandomEffects.Result estimate, double simultaneousHalfDb) {
    public Mean {
      Checks.notNegative(simultaneousHalfDb, "the simultaneous half-width in dB");
    }
  }

  /**
   * Estimates the means.
   *
   * @param samples one per band
   * @return one mean per band
   */
  public Result fit(int units, List<UnitSample> samples) {
    long fitted = samples.stream().filter(s -> s.size() >= LEAST_UNITS).count();
    SignFlipInterval.Result simultaneous =
        fitted == 0
            ? new SignFlipInterval.Result(0, 0, true)
            : SignFlipInterval.withDefaults()
                .withConfidence(confidence)
                .withSeed(seed)
                .fit(columns(units, samples));
    RandomEffects means = RandomEffects.withDefaults().withConfidence(confidence);
    Quantiles quantiles = new Quantiles(simultaneous, fitted);
    List<Optional<Mean>> bands = new ArrayList<>(samples.size());
    for (UnitSample sample : samples) {
      bands.add(
          sample.size() < LEAST_UNITS
              ? Optional.empty()
              : Optional.of(mean(means.fit(sample.valuesDb(), sample.variances()), quantiles)));
    }
    return new Result(bands, simultaneous);
  }

  private Mean mean(RandomEffects.Result mean, Quantiles quantiles) {
    return new Mean(mean, quantiles.of(mean.degreesOfFreedom()) * mean.standardErrorDb());
  }

  /** The multiplier by degrees of freedom: many bands share a few numbers of units. */
  private final class Quantiles {
    private final SignFlipInterval.Result simultaneous;
    private final long bands;
    private final Map<Integer, Double> known = new HashMap<>();

    Quantiles(SignFlipInterval.Result simultaneous, long bands) {
      this.simultaneous = simultaneous;
      this.bands = bands;
    }

    double of(int freedom) {
      return known.computeIfAbsent(
          freedom,
          f ->
              multiplier(
                  simultaneous,
                  StudentT.twoSided(confidence, f),
                  StudentT.twoSided(1 - (1 - confidence) / bands, f)));
    }
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

  /**
   * One row per unit, one column per band, NaN where the unit has no number or the band no mean.
   */
  private static double[][] columns(int units, List<UnitSample> samples) {
    double[][] values = new double[units][samples.size()];
    for (double[] row : values) {
      Arrays.fill(row, Double.NaN);
    }
    for (int b = 0; b < samples.size(); b++) {
      UnitSample sample = samples.get(b);
      for (int k = 0; k < sample.size() && sample.size() >= LEAST_UNITS; k++) {
        values[sample.members()[k]][b] = sample.valuesDb()[k];
      }
    }
    return values;
  }
}
