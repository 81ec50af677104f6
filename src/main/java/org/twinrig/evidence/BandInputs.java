package org.twinrig.evidence;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.study.BandSample;
import org.twinrig.study.CalibratorClass;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * What the budget of one band is made from; the formulas stand at {@link ErrorBudget}.
 *
 * @param from {@code s2_A/ñ_A}, if any unit was seated twice
 * @param to {@code s2_B/ñ_B}, if any unit was seated twice
 * @param fit {@code SE²}
 * @param tauSquared {@code τ²} in dB²
 * @param calibratorHalfWidthDb limit of either calibrator's level in dB, 0 where it cancels;
 *     nothing when it is not known
 * @param drift of the correction for drift, if there was one
 */
record BandInputs(
    Band band,
    Optional<Estimated> from,
    Optional<Estimated> to,
    Estimated fit,
    double tauSquared,
    Optional<Double> calibratorHalfWidthDb,
    Optional<Estimated> drift) {

  /**
   * Share of {@code τ²+v} that stands for a {@code τ²} of 0: far below what any table prints, and
   * yet how badly it is known counts.
   */
  private static final double SMALLEST_SHARE = 1e-14;

  /** A variance in dB² that was estimated, with its degrees of freedom. */
  record Estimated(double variance, double degreesOfFreedom) {
    static Optional<Estimated> ofSeatings(BandSample.Seatings seatings) {
      int freedom = seatings.degreesOfFreedom();
      return seatings.variance().isPresent() && freedom > 0
          ? Optional.of(
              new Estimated(seatings.variance().getAsDouble() / seatings.harmonicMean(), freedom))
          : Optional.empty();
    }

    /** The uncertainty of the variance itself, up to a factor 2. */
    double squareByFreedom() {
      return variance * variance / degreesOfFreedom;
    }
  }

  static BandInputs of(
      PairedUnits paired,
      int b,
      BandOutcome.Fitted fitted,
      Settings settings,
      Optional<DriftCorrection> correction) {
    BandSample sample = paired.at(b);
    double se = fitted.mean().standardErrorDb();
    Optional<Double> limit =
        ErrorBudget.Calibration.of(settings) == ErrorBudget.Calibration.CANCELS
            ? Optional.of(0.0)
            : settings.calibratorClass().map(CalibratorClass::levelLimitDb);
    return new BandInputs(
        fitted.band(),
        Estimated.ofSeatings(sample.from()),
        Estimated.ofSeatings(sample.to()),
        new Estimated(se * se, fitted.mean().degreesOfFreedom()),
        fitted.mean().tauSquared(),
        limit,
        correction
            .flatMap(c -> c.uncertainty(fitted.band().midHz()))
            .map(u -> new Estimated(u.variance(), u.degreesOfFreedom())));
  }

  private List<Estimated> seatings() {
    return Stream.of(from, to).flatMap(Optional::stream).toList();
  }

  /** The variance of a new unit's difference as the model holds it, {@code τ² + v}. */
  private Estimated oneUnit() {
    double seating = seatings().stream().mapToDouble(Estimated::variance).sum();
    return new Estimated(tauSquared + seating, fit.degreesOfFreedom);
  }

  private Estimated units() {
    double all = oneUnit().variance;
    if (all == 0) {
      return new Estimated(0, fit.degreesOfFreedom);
    }
    double seating = seatings().stream().mapToDouble(Estimated::squareByFreedom).sum();
    // The part of the differences that the fit has not brought in already.
    double differences =
        new Estimated(all + fit.variance, fit.degreesOfFreedom).squareByFreedom()
            - fit.squareByFreedom();
    double held = Math.max(tauSquared, SMALLEST_SHARE * all);
    return new Estimated(held, held * held / (differences + seating));
  }

  BandBudget budget(double confidence, Optional<BandBudget.MonteCarloCheck> check) {
    Map<ErrorSource, Contribution> known = new EnumMap<>(ErrorSource.class);
    put(known, ErrorSource.UNITS, units());
    from.ifPresent(e -> put(known, ErrorSource.SEATING_FROM, e));
    to.ifPresent(e -> put(known, ErrorSource.SEATING_TO, e));
    put(known, ErrorSource.FIT, fit);
    calibratorHalfWidthDb.ifPresent(
        a -> {
          for (ErrorSource source :
              List.of(ErrorSource.CALIBRATOR_FROM, ErrorSource.CALIBRATOR_TO)) {
            known.put(source, Contribution.within(source.word(), a));
          }
        });
    drift.ifPresent(e -> put(known, ErrorSource.DRIFT, e));
    return new BandBudget(band, known, confidence, check);
  }

  private static void put(Map<ErrorSource, Contribution> known, ErrorSource source, Estimated e) {
    known.put(source, Contribution.typeA(source.word(), Math.sqrt(e.variance), e.degreesOfFreedom));
  }

  /** The joint distribution that the Monte Carlo run draws from. */
  MonteCarlo.Model model() {
    double a = calibratorHalfWidthDb.orElse(0.0);
    boolean exists =
        Stream.of(List.of(fit), seatings(), drift.stream().toList())
            .flatMap(List::stream)
            .allMatch(e -> e.degreesOfFreedom > 2);
    return new MonteCarlo.Model(
        this::normalVariance, a == 0 ? new double[0] : new double[] {a, a}, exists);
  }

  private DoubleSupplier normalVariance(RandomGenerator random) {
    double unit = oneUnit().variance;
    DoubleSupplier ofDifferences = MonteCarlo.varianceFactor(random, fit.degreesOfFreedom);
    double[] seating = seatings().stream().mapToDouble(Estimated::variance).toArray();
    DoubleSupplier[] ofSeating =
        seatings().stream()
            .map(e -> MonteCarlo.varianceFactor(random, e.degreesOfFreedom))
            .toArray(DoubleSupplier[]::new);
    double corrected = drift.map(Estimated::variance).orElse(0.0);
    DoubleSupplier ofDrift =
        drift.map(e -> MonteCarlo.varianceFactor(random, e.degreesOfFreedom)).orElse(() -> 0);
    return () -> {
      double factor = ofDifferences.getAsDouble();
      double floor = 0;
      for (int g = 0; g < seating.length; g++) {
        floor += seating[g] * ofSeating[g].getAsDouble();
      }
      return Math.max(unit * factor, floor)
          + fit.variance * factor
          + corrected * ofDrift.getAsDouble();
    };
  }
}
