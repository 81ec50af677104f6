package org.twinrig.evidence;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import org.twinrig.band.Band;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.regression.BandOutcome;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Study;

/**
 * What the budget of one band is made from; the formulas stand at {@link ErrorBudget}.
 *
 * <p>{@code s2_A/ñ_A} and {@code s2_B/ñ_B}, if any unit was seated twice; {@code SE²}; {@code τ²}
 * in dB²; what either calibrator's level is off by, which is missing when its class is not known;
 * and the variance of the correction for drift, if there was one.
 */
record BandInputs(
    Band band,
    Optional<VarianceEstimate> from,
    Optional<VarianceEstimate> to,
    VarianceEstimate fit,
    double tauSquared,
    Map<ErrorSource, Level> calibrators,
    Optional<VarianceEstimate> drift) {

  /**
   * Share of {@code τ²+v} that stands for a {@code τ²} of 0: far below what any table prints, and
   * yet how badly it is known counts.
   */
  private static final double SMALLEST_SHARE = 1e-14;

  /** A calibrator's level: rectangular within a half-width, and a normal part beside it, dB. */
  private record Level(double halfWidthDb, double standardDb) {
    /** {@code a²/3} (JCGM 100:2008, 4.3.7) and {@code u²}, endlessly many degrees (G.4.3). */
    VarianceEstimate variance() {
      return new VarianceEstimate(
          halfWidthDb * halfWidthDb / 3 + standardDb * standardDb, Double.POSITIVE_INFINITY);
    }
  }

  private static Map<ErrorSource, Level> calibrators(Study study) {
    Map<ErrorSource, Level> levels = new EnumMap<>(ErrorSource.class);
    boolean cancel = ErrorBudget.Calibration.of(study) == ErrorBudget.Calibration.CANCELS;
    Map.of(ErrorSource.CALIBRATOR_FROM, study.from(), ErrorSource.CALIBRATOR_TO, study.to())
        .forEach(
            (source, fixture) -> {
              double u = fixture.calibratorUncertaintyDb().orElse(0) / 2;
              Optional<Level> level =
                  cancel
                      ? Optional.of(new Level(0, 0))
                      : study.calibratorClass(fixture).map(c -> new Level(c.levelLimitDb(), u));
              level.ifPresent(l -> levels.put(source, l));
            });
    return levels;
  }

  private static Optional<VarianceEstimate> ofSeatings(BandSample.Seatings seatings) {
    int freedom = seatings.degreesOfFreedom();
    return seatings.variance().isPresent() && freedom > 0
        ? Optional.of(
            new VarianceEstimate(
                seatings.variance().getAsDouble() / seatings.harmonicMean(), freedom))
        : Optional.empty();
  }

  /** The uncertainty of a variance itself, up to a factor 2. */
  private static double squareByFreedom(VarianceEstimate e) {
    return e.variance() * e.variance() / e.degreesOfFreedom();
  }

  static BandInputs of(
      PairedUnits paired,
      int b,
      BandOutcome.Fitted fitted,
      Study study,
      Optional<DriftCorrection> correction) {
    BandSample sample = paired.at(b);
    double se = fitted.mean().standardErrorDb();
    return new BandInputs(
        fitted.band(),
        ofSeatings(sample.from()),
        ofSeatings(sample.to()),
        new VarianceEstimate(se * se, fitted.mean().degreesOfFreedom()),
        fitted.mean().tauSquared(),
        calibrators(study),
        correction.flatMap(c -> c.uncertainty(fitted.band().midHz())));
  }

  private List<VarianceEstimate> seatings() {
    return Stream.of(from, to).flatMap(Optional::stream).toList();
  }

  /** The variance of a new unit's difference as the model holds it, {@code τ² + v}. */
  private VarianceEstimate oneUnit() {
    double seating = seatings().stream().mapToDouble(VarianceEstimate::variance).sum();
    return new VarianceEstimate(tauSquared + seating, fit.degreesOfFreedom());
  }

  private VarianceEstimate units() {
    double all = oneUnit().variance();
    if (all == 0) {
      return new VarianceEstimate(0, fit.degreesOfFreedom());
    }
    double seating = seatings().stream().mapToDouble(BandInputs::squareByFreedom).sum();
    // The part of the differences that the fit has not brought in already.
    double differences =
        squareByFreedom(new VarianceEstimate(all + fit.variance(), fit.degreesOfFreedom()))
            - squareByFreedom(fit);
    double held = Math.max(tauSquared, SMALLEST_SHARE * all);
    return new VarianceEstimate(held, held * held / (differences + seating));
  }

  BandBudget budget(double confidence, Optional<BandBudget.MonteCarloCheck> check) {
    Map<ErrorSource, VarianceEstimate> known = new EnumMap<>(ErrorSource.class);
    known.put(ErrorSource.UNITS, units());
    from.ifPresent(e -> known.put(ErrorSource.SEATING_FROM, e));
    to.ifPresent(e -> known.put(ErrorSource.SEATING_TO, e));
    known.put(ErrorSource.FIT, fit);
    calibrators.forEach((source, level) -> known.put(source, level.variance()));
    drift.ifPresent(e -> known.put(ErrorSource.DRIFT, e));
    return new BandBudget(band, known, confidence, check);
  }

  /** Draws from the joint distribution. */
  MonteCarlo.Result drawn(MonteCarlo monteCarlo, long seed) {
    double[] halfWidths =
        calibrators.values().stream().mapToDouble(Level::halfWidthDb).filter(a -> a > 0).toArray();
    return monteCarlo.run(this::normalVariance, halfWidths, seed);
  }

  /** Whether that has a standard deviation: Student's t does above two degrees of freedom. */
  boolean deviates() {
    return Stream.of(List.of(fit), seatings(), drift.stream().toList())
        .flatMap(List::stream)
        .allMatch(e -> e.degreesOfFreedom() > 2);
  }

  private DoubleSupplier normalVariance(RandomGenerator random) {
    double unit = oneUnit().variance();
    DoubleSupplier ofDifferences = MonteCarlo.varianceFactor(random, fit.degreesOfFreedom());
    double[] seating = seatings().stream().mapToDouble(VarianceEstimate::variance).toArray();
    DoubleSupplier[] ofSeating =
        seatings().stream()
            .map(e -> MonteCarlo.varianceFactor(random, e.degreesOfFreedom()))
            .toArray(DoubleSupplier[]::new);
    double corrected = drift.map(VarianceEstimate::variance).orElse(0.0);
    DoubleSupplier ofDrift =
        drift.map(e -> MonteCarlo.varianceFactor(random, e.degreesOfFreedom())).orElse(() -> 0);
    double certified =
        calibrators.values().stream().mapToDouble(l -> l.standardDb() * l.standardDb()).sum();
    return () -> {
      double factor = ofDifferences.getAsDouble();
      double floor = 0;
      for (int g = 0; g < seating.length; g++) {
        floor += seating[g] * ofSeating[g].getAsDouble();
      }
      return Math.max(unit * factor, floor)
          + fit.variance() * factor
          + corrected * ofDrift.getAsDouble()
          + certified;
    };
  }
}
