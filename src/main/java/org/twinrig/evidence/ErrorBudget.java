package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.response.Anchor;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Where the error of a translated level comes from, band by band.
 *
 * <p>Measurand: the difference that one new unit of the kind would show between the fixtures when
 * it is averaged over as many seatings on each as in the study, less the estimated mean transfer.
 * Its estimate is 0; the inputs are
 *
 * <ul>
 *   <li>units: {@code τ²}, see below for its degrees of freedom;
 *   <li>seating on either fixture: {@code s2_g/ñ_g}, with {@code ν_g = Σ (n_ig - 1)} over the units
 *       that take part; not known where no unit was seated twice, and then part of {@code τ²};
 *   <li>fit: {@code SE²}, with {@code n - 1};
 *   <li>calibrator: rectangular within the limits of the class of the fixture's own, and with it
 *       the normal uncertainty of its level where a certificate states one, {@code U/2}; one for
 *       each fixture, independent, with infinite degrees of freedom. Where the stated level is that
 *       of the certificate the limits count too much: no limit of what the level drifts by between
 *       certificates is known to us. That is the cautious reading: an error that both calibrations
 *       share, as when one calibrator served for both, would cancel. With an anchor the level of
 *       either chain cancels, and both are exactly 0;
 *   <li>drift, only where sessions were corrected by the check unit: how badly its departures are
 *       known, see {@link DriftCorrection#uncertainty}. On the cautious side: as far as the units
 *       were captured in different sessions, {@code τ²} holds that error already. Drift that was
 *       not corrected is no source of its own; it is in {@code τ²} and in the seating scatter.
 * </ul>
 *
 * <p>The tolerance of the ear simulators is no input: the transfer is that of two specimens, and
 * holds what sets them apart from others of their type.
 *
 * <p>{@code τ²} is not observed but left over when the seating variance is taken from the scatter
 * of the units' differences, so that it has Satterthwaite's degrees of freedom of a difference of
 * variances, and it rests on the same differences as {@code SE²}, which adds their covariance:
 * {@code ν = τ⁴ / (((τ²+v+SE²)² - SE⁴)/(n-1) + Σ_g (s2_g/ñ_g)²/ν_g)}, {@code v = Σ_g s2_g/ñ_g}. The
 * {@code n - 1} of a directly observed variance would cover too rarely (0.93 for 0.95 with 8 units
 * when half the scatter is seating, 0.91 with three). Without known seating scatter the budget is
 * Student's prediction interval of one more observation, exactly. A {@code τ²} of 0 enters as its
 * limit from above: that it was estimated as 0 does not make it known, and the degrees of freedom
 * must not jump where it vanishes. Otherwise it is an approximation, on the wide side where seating
 * has a great share: {@code v} is exact only for equal numbers of seatings, and the covariance of
 * {@code τ²} with the seating variances, which is negative, is left out. The Monte Carlo run draws
 * all of them jointly and shows what that costs.
 *
 * <p>The Monte Carlo run takes one band per octave. Trial by trial {@code T = (τ²+v)(n-1)/χ²_{n-1}}
 * stands for the variance of a new unit's difference, {@code V_g = (s2_g/ñ_g)·ν_g/χ²} for the
 * seating parts, and the error is normal with variance {@code max(T, ΣV_g) + SE²(n-1)/χ²_{n-1}}
 * (the same {@code χ²} as in {@code T}: both rest on the same differences), plus the calibrators'
 * uniform parts. For an input on its own this is the t distribution of JCGM 101:2008, 6.4.9.
 *
 * <p>Sources: JCGM 100:2008, 5.1.2, 6.2.1, G.4.1; Satterthwaite 1946, Biometrics Bulletin 2:110;
 * JCGM 101:2008, 6.4, 7.9.2, 8.1.
 *
 * <p>It holds every band that has an estimate.
 */
public record ErrorBudget(
    String kind, List<BandBudget> bands, Calibration calibration, int trials) {

  private static final int SIGNIFICANT_DIGITS = 1;

  public ErrorBudget {
    bands = List.copyOf(bands);
  }

  public enum Calibration {
    /** Captures are pinned to an anchor: the level of either chain cancels. */
    CANCELS,
    /** Levels stand as calibrated, and the class of the calibrators is known. */
    BY_CLASS,
    /** Levels stand as calibrated, and the class of a calibrator is not known. */
    NOT_KNOWN;

    /** How they enter a study: by its anchor first, then by what is known of the calibrators. */
    public static Calibration of(Study study) {
      if (!(study.settings().anchor() instanceof Anchor.None)) {
        return CANCELS;
      }
      return Stream.of(study.from(), study.to())
              .map(study::calibratorClass)
              .allMatch(Optional::isPresent)
          ? BY_CLASS
          : NOT_KNOWN;
    }
  }

  /** The budget of a kind, with the correction of its sessions for drift, if there was one. */
  public static ErrorBudget of(
      PairedUnits paired, KindEstimate estimate, Study study, Optional<DriftCorrection> drift) {
    Settings settings = study.settings();
    Map<Integer, BandInputs> inputs = new TreeMap<>();
    for (int b = 0; b < estimate.grid().size(); b++) {
      if (estimate.bands().get(b) instanceof BandOutcome.Fitted fitted) {
        inputs.put(b, BandInputs.of(paired, b, fitted, study, drift));
      }
    }
    List<Integer> checked = onePerOctave(inputs);
    MonteCarlo monteCarlo = new MonteCarlo(settings.confidence(), MonteCarlo.TRIALS);
    List<BandBudget> bands = new ArrayList<>();
    inputs.forEach(
        (b, in) -> {
          BandBudget budget = in.budget(settings.confidence(), Optional.empty());
          Optional<BandBudget.MonteCarloCheck> check =
              budget
                  .total()
                  .filter(total -> total.variance() > 0 && checked.contains(b))
                  .map(total -> check(in, total, monteCarlo, settings.seed() + b));
          bands.add(in.budget(settings.confidence(), check));
        });
    return new ErrorBudget(paired.kind(), bands, Calibration.of(study), monteCarlo.trials());
  }

  private static BandBudget.MonteCarloCheck check(
      BandInputs in, UncertaintyBudget total, MonteCarlo monteCarlo, long seed) {
    MonteCarlo.Result drawn = in.drawn(monteCarlo, seed);
    double delta = MonteCarlo.numericalTolerance(total.combined(), SIGNIFICANT_DIGITS);
    return new BandBudget.MonteCarloCheck(
        in.deviates() ? OptionalDouble.of(drawn.standardDeviation()) : OptionalDouble.empty(),
        drawn.halfWidth(),
        delta,
        Math.abs(drawn.halfWidth() - total.expanded()) <= delta);
  }

  /** In each octave that has any, the band nearest to its middle; the lower of two equally near. */
  private static List<Integer> onePerOctave(Map<Integer, BandInputs> inputs) {
    Map<Long, Integer> nearest = new TreeMap<>();
    Map<Long, Double> distances = new TreeMap<>();
    inputs.forEach(
        (b, in) -> {
          double octaves = Math.log(in.band().midHz() / 1000) / Math.log(Band.OCTAVE_RATIO);
          long octave = Math.round(octaves);
          double distance = Math.abs(octaves - octave);
          if (distance < distances.getOrDefault(octave, 1.0) - 1e-9) {
            nearest.put(octave, b);
            distances.put(octave, distance);
          }
        });
    return List.copyOf(nearest.values());
  }
}
