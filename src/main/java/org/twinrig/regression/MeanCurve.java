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
 *
 * @param confidence strictly between 0 and 1
 * @param seed of the drawn sign patterns: quantities with the same units and the same seed are
 *     given the same patterns
 */
public record MeanCurve(double confidence, long seed) {
  /** Fewer units than this have no mean. */
  static final int LEAST_UNITS = 3;

  public MeanCurve {
    Checks.fraction(confidence, "confidence");
  }

  /** One mean per band, nothing where fewer than three units have a number. */
  public record Result(List<Optional<Mean>> bands, SignFlipInterval.Result simultaneous) {
    public Result {
      bands = List.copyOf(bands);
    }
  }

  /**
   * A mean with its pointwise interval, and the half-width in dB that holds at all bands at once.
   */
  public record Mean(RandomEffects.Result estimate, double simultaneousHalfDb) {
    public Mean {
      Checks.notNegative(simultaneousHalfDb, "the simultaneous half-width in dB");
    }
  }

  /** Estimates one mean for each sample, one sample per band. */
  public Result fit(int units, List<UnitSample> samples) {
    long fitted = samples.stream().filter(s -> s.size() >= LEAST_UNITS).count();
    SignFlipInterval.Result simultaneous =
        fitted == 0
            ? new SignFlipInterval.Result(0, 0, true)
            : new SignFlipInterval(confidence, seed).fit(columns(units, samples));
    RandomEffects means = new RandomEffects(confidence);
    // The multiplier by degrees of freedom: many bands share a few numbers of units.
    Map<Integer, Double> multipliers = new HashMap<>();
    List<Optional<Mean>> bands = new ArrayList<>(samples.size());
    for (UnitSample sample : samples) {
      if (sample.size() < LEAST_UNITS) {
        bands.add(Optional.empty());
      } else {
        RandomEffects.Result mean = means.fit(sample.valuesDb(), sample.variances());
        double multiplier =
            multipliers.computeIfAbsent(
                mean.degreesOfFreedom(), f -> multiplier(simultaneous, f, fitted));
        bands.add(Optional.of(new Mean(mean, multiplier * mean.standardErrorDb())));
      }
    }
    return new Result(bands, simultaneous);
  }

  /**
   * Never below the pointwise quantile. With fewer sign patterns than 1/α (five units or fewer at
   * 95 %) no pattern is rare enough for the quantile to exist, and Bonferroni's stands alone.
   */
  private double multiplier(SignFlipInterval.Result simultaneous, int freedom, long bands) {
    double bonferroni = StudentT.twoSided(1 - (1 - confidence) / bands, freedom);
    boolean enough = simultaneous.patterns() * (1 - confidence) >= 1 - 1e-9;
    double q = enough ? Math.min(simultaneous.multiplier(), bonferroni) : bonferroni;
    return Math.max(StudentT.twoSided(confidence, freedom), q);
  }

  /** One row per unit, one column per band, NaN where either has no number. */
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
