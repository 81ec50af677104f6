package org.twinrig.evidence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.twinrig.regression.StudentT;

/**
 * The variances of a zone, and the half-widths in dB that follow from them, root mean squares over
 * its bands; the formulas stand at {@link Plan}.
 */
public final class ZoneVariance {
  private final List<BandVariance> bands;
  private final double confidence;
  private final Misses missesFrom;
  private final Misses missesTo;
  private final Map<Integer, Factors> factors = new HashMap<>();

  /** A zone of one or more bands, with prediction intervals at a confidence. */
  ZoneVariance(List<BandVariance> bands, double confidence) {
    this.bands = List.copyOf(bands);
    this.missesFrom = Misses.of(this.bands, BandVariance::from);
    this.missesTo = Misses.of(this.bands, BandVariance::to);
    this.confidence = confidence;
  }

  /** What depends on the number of units alone. */
  private record Factors(double t, double added, double kept, double pilot) {}

  /** The fewest units at a band of the zone. */
  int units() {
    return bands.stream().mapToInt(BandVariance::units).min().orElseThrow();
  }

  /** What neighbouring bands lend to the least certain band of the zone. */
  private double priorFreedom() {
    return bands.stream().mapToDouble(BandVariance::priorFreedom).min().orElseThrow();
  }

  double confidence() {
    return confidence;
  }

  boolean seatingKnown(boolean old) {
    return bands.stream().allMatch(b -> (old ? b.from() : b.to()).known());
  }

  public double presentHalfDb() {
    return Math.sqrt(
        mean(
            b -> {
              double t = StudentT.twoSided(confidence, b.units() - 1 + b.priorFreedom());
              return t * t * b.meanSquare();
            }));
  }

  /** Half-width that a study of another design is expected to have, dB. */
  public double halfDb(Design design) {
    return factors(design.units()).t * Math.sqrt(mean(b -> b.expected(design)));
  }

  /** Standard deviation of a unit's difference about the mean, its seatings with it, dB. */
  double unitDeviationDb() {
    return Math.sqrt(mean(BandVariance::unitVariance));
  }

  /** Half-width that no number of units and seatings goes below, dB. */
  public double neverBelowDb() {
    double z = StudentT.twoSided(confidence, Double.POSITIVE_INFINITY);
    return z * Math.sqrt(mean(BandVariance::rest));
  }

  /** Half-width that the study, gone on with to another design, exceeds with 1 - chance, dB. */
  public double upperHalfDb(Design design) {
    Factors f = factors(design.units());
    double expected = mean(b -> b.expected(design));
    double found = found(design.units());
    double added = added(design.units());
    double renewed = 1 - square(Math.min(1, expected / found));
    double spread =
        square(added * expected * f.added)
            + square((1 - added) * expected * f.kept) * renewed
            + square((added + (1 - added) * renewed) * found * f.pilot)
            + square(seatingPart(design, true))
            + square(seatingPart(design, false));
    return f.t * Math.sqrt(expected + Math.sqrt(spread));
  }

  /** Which share of the degrees of freedom the units to be added will have. */
  private double added(int units) {
    return (units - units()) / (units - 1.0);
  }

  /** The mean square the study has found, as a study of so many units would find it, dB². */
  private double found(int units) {
    return mean(b -> b.growth(units) * b.meanSquare() / b.growth(b.units()));
  }

  /** What the seating scatter, not known exactly, can add. */
  private double seatingPart(Design design, boolean old) {
    double planned = old ? design.seatingsFrom() : design.seatingsTo();
    double change =
        mean(
            b -> {
              BandVariance.Seating s = old ? b.from() : b.to();
              return b.growth(design.units()) * s.variance() * (1 / planned - 1 / s.seatings());
            });
    Misses misses = old ? missesFrom : missesTo;
    return change * (change > 0 ? misses.above : misses.below);
  }

  /**
   * By which share a seating variance may lie above its estimate, and below it (then negative), at
   * the chance of the plan: a greater one than thought adds where seatings are taken away, a
   * smaller one where they are added.
   */
  private record Misses(double above, double below) {
    static Misses of(List<BandVariance> bands, Function<BandVariance, BandVariance.Seating> side) {
      OptionalInt freedom =
          bands.stream()
              .map(side)
              .filter(BandVariance.Seating::known)
              .mapToInt(BandVariance.Seating::degreesOfFreedom)
              .min();
      if (freedom.isEmpty()) {
        return new Misses(0, 0);
      }
      double nu = freedom.getAsInt();
      return new Misses(truth(nu, 1 - Plan.LIMIT), truth(nu, Plan.LIMIT));
    }
  }

  private Factors factors(int units) {
    return factors.computeIfAbsent(
        units,
        n -> {
          double pilot = units() - 1;
          return new Factors(
              StudentT.twoSided(confidence, n - 1 + priorFreedom()),
              n > units() ? above(n - units()) : 0,
              above(pilot),
              truth(pilot, 1 - Plan.LIMIT));
        });
  }

  /** By which share the estimate of a variance may come out above it, at the chance of the plan. */
  private static double above(double degreesOfFreedom) {
    return quantile(degreesOfFreedom, Plan.LIMIT) / degreesOfFreedom - 1;
  }

  /** By which share a variance lies above its estimate where that came out at a quantile. */
  private static double truth(double degreesOfFreedom, double probability) {
    return degreesOfFreedom / quantile(degreesOfFreedom, probability) - 1;
  }

  private static double quantile(double degreesOfFreedom, double probability) {
    // As χ²; the library makes and seeds an unused generator for the distribution of that name.
    return new GammaDistribution(null, degreesOfFreedom / 2, 2)
        .inverseCumulativeProbability(probability);
  }

  private double mean(ToDoubleFunction<BandVariance> value) {
    return bands.stream().mapToDouble(value).average().orElseThrow();
  }

  private static double square(double value) {
    return value * value;
  }
}
