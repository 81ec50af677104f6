package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.internal.VarianceEstimate;

/**
 * The error budget of one band of one kind.
 *
 * <p>A source that is not known is missing from the map, never 0. Seating scatter that is not known
 * (no unit was seated twice) is contained in the scatter between units, so that the total stands; a
 * calibrator that is not known is contained in nothing, and there is no total without it.
 */
public record BandBudget(
    Band band,
    Map<ErrorSource, VarianceEstimate> known,
    double confidence,
    Optional<MonteCarloCheck> monteCarlo) {

  public BandBudget {
    known = java.util.Collections.unmodifiableMap(new EnumMap<>(known));
  }

  /** The variance sources add together, dB²; nothing when one of them is not known. */
  public OptionalDouble variance(ErrorSource... sources) {
    return known.keySet().containsAll(List.of(sources))
        ? OptionalDouble.of(Stream.of(sources).mapToDouble(s -> known.get(s).variance()).sum())
        : OptionalDouble.empty();
  }

  /** The variance the two calibrators add: dB², or nothing when it is not known. */
  public OptionalDouble calibratorVariance() {
    return variance(ErrorSource.CALIBRATOR_FROM, ErrorSource.CALIBRATOR_TO);
  }

  /**
   * The sources that are not known, in the order of the budget. Drift that was not corrected is
   * none of them: it is contained in the scatter between units.
   */
  public List<ErrorSource> unknown() {
    List<ErrorSource> missing = new ArrayList<>(List.of(ErrorSource.values()));
    missing.removeAll(known.keySet());
    missing.remove(ErrorSource.DRIFT);
    return missing;
  }

  /** All of it combined; nothing when the calibrators are not known. */
  public Optional<UncertaintyBudget> total() {
    return calibratorVariance().isPresent() ? Optional.of(knownOnly()) : Optional.empty();
  }

  UncertaintyBudget knownOnly() {
    return new UncertaintyBudget(List.copyOf(known.values()), confidence);
  }

  /**
   * The band's budget by Monte Carlo, and whether it agrees: whether the ends of both coverage
   * intervals lie no further apart than the numerical tolerance of JCGM 101:2008, 7.9.2 and 8.1,
   * for one significant digit of the combined standard uncertainty. The standard deviation of the
   * draws is missing where it does not exist (some variance has two degrees of freedom or fewer);
   * all in dB.
   */
  public record MonteCarloCheck(
      OptionalDouble standardDeviationDb, double expandedDb, double toleranceDb, boolean agrees) {}
}
