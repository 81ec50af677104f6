package org.twinrig.evidence;

import java.util.OptionalDouble;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.WindowRule;
import org.twinrig.response.Levels;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;

/**
 * The variances of one band that a plan rests on; the formulas stand at {@link Plan}.
 *
 * <p>How many units {@code n₀} the study has here; the variance in dB² of one unit's difference
 * about the mean of the kind, its seatings with it; the mean square in dB² of errors on units left
 * out that intervals rest on, and the degrees of freedom that neighbouring bands lend to it; {@code
 * p}, how many coefficients the rule spends beside the mean; seating on the old fixture, as the
 * rule lets it through, and on the new one.
 */
record BandVariance(
    int units,
    double unitVariance,
    double meanSquare,
    double priorFreedom,
    double parameters,
    Seating from,
    Seating to) {

  /**
   * Seating scatter at a band: variance of one seating in dB², 0 where it is not known and so
   * contained in the rest; harmonic mean of the units' seatings; degrees of freedom, 0 where not
   * known.
   */
  record Seating(double variance, double seatings, int degreesOfFreedom) {
    static Seating of(OptionalDouble variance, BandSample.Seatings seatings) {
      boolean known = variance.isPresent() && seatings.degreesOfFreedom() > 0;
      return new Seating(
          known ? variance.getAsDouble() : 0,
          seatings.harmonicMean(),
          known ? seatings.degreesOfFreedom() : 0);
    }

    boolean known() {
      return degreesOfFreedom > 0;
    }

    double present() {
      return variance / seatings;
    }
  }

  static BandVariance of(PairedUnits paired, int band, BandOutcome.Fitted fitted) {
    BandSample sample = paired.at(band);
    BandOutcome.Errors errors = fitted.prediction().errors();
    OptionalDouble old =
        fitted
            .prediction()
            .window()
            .map(WindowRule::seatingVariance)
            .orElse(sample.from().variance());
    return new BandVariance(
        sample.size(),
        fitted.mean().tauSquared() + fitted.scatter().seatingVariance(),
        errors.varianceDb2(),
        errors.degreesOfFreedom() - (sample.size() - 1),
        fitted.prediction().window().map(w -> parameters(w, paired, sample)).orElse(0.0),
        Seating.of(old, sample.from()),
        Seating.of(sample.to().variance(), sample.to()));
  }

  /** {@code Σ wᵢᵀ(WᵀW+λI)⁻¹wᵢ}; a unit that lacks a band of the window counts as the mean one. */
  private static double parameters(WindowRule window, PairedUnits paired, BandSample sample) {
    double sum = 0;
    int counted = 0;
    for (int i : sample.members()) {
      Levels old = paired.from().means().get(i);
      if (window.predictors().stream().allMatch(p -> old.has(p.band()))) {
        sum += window.leverage(old, sample.size()) - 1.0 / sample.size();
        counted++;
      }
    }
    double parameters = counted == 0 ? 0 : sum * sample.size() / counted;
    // Left-out errors exist, so that the rule left room for them: never all degrees of freedom.
    return Math.min(parameters, sample.size() - 2);
  }

  /** What the error of a rule made from {@code n} units has over that of one made from all. */
  double growth(int n) {
    return n / (n - 1 - parameters);
  }

  /** Variance of a unit about the rule, its seatings apart; never below 0, dB². */
  double rest() {
    return Math.max(0, meanSquare / growth(units) - from.present() - to.present());
  }

  /** The mean square error that a study of another design is expected to find, dB². */
  double expected(Design design) {
    return growth(design.units())
        * (rest() + from.variance / design.seatingsFrom() + to.variance / design.seatingsTo());
  }
}
