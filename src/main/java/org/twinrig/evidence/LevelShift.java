package org.twinrig.evidence;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Checks;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * By how much a kind reads louder on the new fixture than on the old one: the mean level over the
 * anchor, new minus old. Pinning captures to the anchor makes the transfer one of shape; this is
 * the level that pinning takes away.
 *
 * <p>Known only where levels are: of units whose captures all belong to sessions, whose calibrator
 * readings make them dB SPL on both fixtures. A unit's level is averaged like any band (sides in
 * dB, then seatings); the mean over units is that of {@link RandomEffects}.
 *
 * <p>A new unit's shift, averaged over as many seatings as in the study, lies within {@code t_{n-1}
 * · √(τ² + v̄ + SE²)} of the mean, {@code v̄} the mean of the {@code v_i} (Higgins, Thompson and
 * Spiegelhalter 2009, J. R. Stat. Soc. A 172:137, equation 12, from memory; there for a unit's
 * expectation, without {@code v̄}). What all sessions share, such as the error of one calibrator
 * used on both fixtures, cannot be seen and is in no interval; it cancels where it is the same on
 * both.
 *
 * @param kind the kind
 * @param mean the estimate of the mean shift, dB
 * @param seatings seatings on the old fixture, with their pooled variance at the anchor, dB²
 * @param seatingVariance {@code v̄}, dB²
 */
public record LevelShift(
    String kind, RandomEffects.Result mean, BandSample.Seatings seatings, double seatingVariance) {

  /** One band to hold the level at the anchor; which one makes no difference. */
  private static final BandGrid ONE_BAND = BandGrid.covering(900, 1100, 1);

  public LevelShift {
    Checks.notNegative(seatingVariance, "the seating variance in dB²");
  }

  /**
   * The shift of every kind with three units or more whose levels are known on both fixtures; none
   * where the study has no anchor, because levels are then part of the transfer.
   *
   * @param accepted the captures that count, pinned
   */
  public static List<LevelShift> of(Study study, List<AnchoredCapture> accepted) {
    if (study.settings().anchor() instanceof Anchor.None) {
      return List.of();
    }
    Set<String> sessions = study.sessions().stream().map(Session::name).collect(Collectors.toSet());
    Set<String> uncalibrated =
        accepted.stream()
            .map(a -> a.capture().entry())
            .filter(e -> !sessions.contains(e.session()))
            .map(e -> e.unit())
            .collect(Collectors.toSet());
    Predicate<AnchoredCapture> known = a -> !uncalibrated.contains(a.capture().entry().unit());
    List<AnchoredCapture> levels = accepted.stream().filter(known).map(LevelShift::level).toList();
    return new Pairing(study)
        .pair(levels, Unit.Role.FIT).stream()
            .filter(paired -> paired.units().size() >= Settings.FEWEST_UNITS)
            .map(paired -> of(paired, study.settings().confidence()))
            .toList();
  }

  private static LevelShift of(PairedUnits paired, double confidence) {
    BandSample sample = paired.at(0);
    double mean = 0;
    for (double v : sample.variances()) {
      mean += v / sample.size();
    }
    return new LevelShift(
        paired.kind(),
        new RandomEffects(confidence).fit(sample.differencesDb(), sample.variances()),
        sample.from(),
        mean);
  }

  /** A capture with its level at the anchor in place of its bands. */
  private static AnchoredCapture level(AnchoredCapture pinned) {
    return new AnchoredCapture(
        pinned.capture(), Levels.copyOf(ONE_BAND, new double[] {pinned.anchorDb()}), 0);
  }

  /**
   * Variance of the shift of a graph averaged over so many seatings, about the mean shift, dB²: of
   * a new unit, and of the mean.
   */
  public double varianceDb2(double seatingsOfGraph) {
    double fewer = Math.max(0, 1 / seatingsOfGraph - 1 / seatings.harmonicMean());
    return mean.tauSquared()
        + seatingVariance
        + mean.standardErrorDb() * mean.standardErrorDb()
        + seatings.variance().orElse(0) * fewer;
  }

  /** Half-width of the prediction interval of a unit seated as often as in the study: dB. */
  public double predictionHalfDb() {
    return StudentT.twoSided(mean.confidence(), mean.degreesOfFreedom())
        * Math.sqrt(varianceDb2(seatings.harmonicMean()));
  }
}
