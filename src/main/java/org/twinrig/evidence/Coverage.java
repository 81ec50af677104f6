package org.twinrig.evidence;

import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Checks;

/**
 * How often a prediction interval of a stated confidence held units that the rule never saw.
 *
 * <p>What {@code n} counts is units: the bands of one unit err together, so that a hundred bands of
 * one unit are nearer to one observation than to a hundred. The share is the mean over units of
 * each unit's own share of bands inside, {@code p̂ = Σ_i p_i / n}. Its interval is {@link
 * ClopperPearson} for {@code Σ p_i} of {@code n}, taken down to a whole unit for the lower end and
 * up for the upper one. Where every unit is wholly inside or wholly outside that is exact. Anywhere
 * between, a unit's share scatters less than the all or nothing the interval allows for ({@code
 * Var(p_i) <= p(1-p)}), so that it is wider than need be; how much less depends on how far bands go
 * together, which a dozen units cannot tell.
 *
 * <p>Units left out in turn are predicted from each other, which makes their errors depend on each
 * other a little; units held out share one estimate. Neither is in the interval.
 *
 * <p>The region is nothing for all bands.
 */
public record Coverage(
    Optional<Region> region, double stated, int units, double reached, double low, double high) {

  /** The confidences at which it is looked at. */
  public static final List<Double> STATED = List.of(0.5, 0.8, 0.9, 0.95, 0.99);

  /** A sum of shares this near to a whole number is one. */
  private static final double HAIR = 1e-9;

  public Coverage {
    Checks.fraction(stated, "a stated confidence");
    if (!(0 <= low && low <= reached && reached <= high && high <= 1)) {
      throw new IllegalArgumentException("a coverage must lie in its interval");
    }
  }

  /** Coverage from each unit's share of bands inside, one or more; its interval at a confidence. */
  static Coverage of(
      Optional<Region> region, double stated, List<Double> shares, double confidence) {
    int n = shares.size();
    double sum = shares.stream().mapToDouble(p -> p).sum();
    return new Coverage(
        region,
        stated,
        n,
        Math.min(1, sum / n),
        ClopperPearson.of((int) Math.floor(sum + HAIR), n, confidence).low(),
        ClopperPearson.of((int) Math.ceil(sum - HAIR), n, confidence).high());
  }
}
