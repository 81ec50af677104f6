package org.twinrig.translation;

import org.twinrig.regression.StudentT;

/**
 * Makes intervals of uncertainties, and uncertainties of intervals: {@code t_ν} at a confidence
 * {@code 1-α} for one band, {@code t_{ν, 1-α/(2·bands)}} for all bands of a graph at once.
 */
final class Intervals {
  private final StudentT.Quantiles own;
  private final StudentT.Quantiles whole;
  private final StudentT.Quantiles likeness = new StudentT.Quantiles(0.99);

  Intervals(double confidence, int bands) {
    this.own = new StudentT.Quantiles(confidence);
    this.whole = new StudentT.Quantiles(1 - (1 - confidence) / bands);
  }

  double ownHalfDb(Uncertainty u) {
    return own.at(u.degreesOfFreedom()) * u.standardDb();
  }

  double wholeHalfDb(Uncertainty u) {
    return whole.at(u.degreesOfFreedom()) * u.standardDb();
  }

  /** How far from the mean of units, in their standard deviations, one in a hundred lies. */
  double likeness(int units) {
    return likeness.at(units - 1.0);
  }

  Uncertainty own(TranslatedBand.Reach reach) {
    return new Uncertainty(
        reach.halfDb() / own.at(reach.degreesOfFreedom()), reach.degreesOfFreedom());
  }

  Uncertainty whole(TranslatedBand.Reach reach) {
    return new Uncertainty(
        reach.halfDb() / whole.at(reach.degreesOfFreedom()), reach.degreesOfFreedom());
  }
}
