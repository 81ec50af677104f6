package org.twinrig.translation;

import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.regression.StudentT;

/**
 * Makes intervals of uncertainties, and uncertainties of intervals: {@code t_ν} at a confidence
 * {@code 1-α} for one band, {@code t_{ν, 1-α/(2·bands)}} for all bands of a graph at once.
 */
final class Intervals {
  private final Quantiles own;
  private final Quantiles whole;
  private final Quantiles likeness = new Quantiles(0.99, new ConcurrentHashMap<>());

  Intervals(double confidence, int bands) {
    this.own = new Quantiles(confidence, new ConcurrentHashMap<>());
    this.whole = new Quantiles(1 - (1 - confidence) / bands, new ConcurrentHashMap<>());
  }

  /** By degrees of freedom: a catalogue has millions of bands and a few of these. */
  private record Quantiles(double confidence, ConcurrentHashMap<Double, Double> known) {
    double of(double freedom) {
      return known.computeIfAbsent(freedom, f -> StudentT.twoSided(confidence, f));
    }
  }

  double ownHalfDb(Uncertainty u) {
    return own.of(u.degreesOfFreedom()) * u.standardDb();
  }

  double wholeHalfDb(Uncertainty u) {
    return whole.of(u.degreesOfFreedom()) * u.standardDb();
  }

  /** How far from the mean of units, in their standard deviations, one in a hundred lies. */
  double likeness(int units) {
    return likeness.of(units - 1.0);
  }

  Uncertainty own(TranslatedBand.Reach reach) {
    return new Uncertainty(
        reach.halfDb() / own.of(reach.degreesOfFreedom()), reach.degreesOfFreedom());
  }

  Uncertainty whole(TranslatedBand.Reach reach) {
    return new Uncertainty(
        reach.halfDb() / whole.of(reach.degreesOfFreedom()), reach.degreesOfFreedom());
  }
}
