package org.twinrig.evidence;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.twinrig.internal.Checks;

/**
 * The exact interval of a share after Clopper and Pearson.
 *
 * <p>Of {@code n} independent trials {@code x} came true. The interval at confidence {@code C} goes
 * from the {@code (1-C)/2} quantile of the beta distribution with parameters {@code x, n-x+1} to
 * the {@code (1+C)/2} quantile of that with {@code x+1, n-x}; it begins at 0 for {@code x = 0} and
 * ends at 1 for {@code x = n}. It holds at least as often as stated, whatever the true share.
 *
 * <p>Source: Clopper and Pearson 1934, Biometrika 26:404.
 */
public record ClopperPearson(int hits, int trials, double confidence, double low, double high) {
  private static final double ACCURACY = 1e-14;

  /** The interval of a share of {@code x} in {@code n} at a confidence strictly between 0 and 1. */
  public static ClopperPearson of(int hits, int trials, double confidence) {
    Checks.fraction(confidence, "confidence");
    return new ClopperPearson(
        hits,
        trials,
        confidence,
        low(hits, trials, confidence),
        1 - low(trials - hits, trials, confidence));
  }

  private static double low(int hits, int trials, double confidence) {
    if (hits < 0 || hits > trials || trials < 1) {
      throw new IllegalArgumentException(
          "a share needs 0 <= hits <= trials and 1 or more trials, but has "
              + "%s of %s".formatted(hits, trials));
    }
    return hits == 0
        ? 0
        : new BetaDistribution(null, hits, trials - hits + 1.0, ACCURACY)
            .inverseCumulativeProbability((1 - confidence) / 2);
  }

  public double share() {
    return (double) hits / trials;
  }
}
