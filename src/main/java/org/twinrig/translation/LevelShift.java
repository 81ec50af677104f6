package org.twinrig.translation;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
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
 * readings make them dB SPL on both fixtures. Where any session notes its drive, levels are those
 * at 1 V and captures without it have none; otherwise all are taken to be driven alike. A unit's
 * level is averaged like any band (sides in dB, then seatings); the mean over units is that of
 * {@link RandomEffects}.
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
 * @param seatings harmonic mean of the units' numbers of seatings on the old fixture
 * @param seatVariance pooled variance of a seating there at the anchor, dB²; nothing when no unit
 *     was seated twice
 * @param seatingVariance {@code v̄}, dB²
 */
public record LevelShift(
    String kind,
    RandomEffects.Result mean,
    double seatings,
    OptionalDouble seatVariance,
    double seatingVariance) {

  /** One band to hold the level at the anchor; which one makes no difference. */
  private static final BandGrid ONE_BAND = BandGrid.covering(900, 1100, 1);

  public LevelShift {
    Checks.positive(seatings, "the number of seatings");
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
    Map<String, Session> sessions =
        study.sessions().stream().collect(Collectors.toMap(Session::name, Function.identity()));
    boolean driveNoted = sessions.values().stream().anyMatch(s -> s.setup().driveV().isPresent());
    Function<AnchoredCapture, OptionalDouble> level =
        a -> levelDb(a, sessions.get(a.capture().entry().session()), driveNoted);
    Set<String> unknown =
        accepted.stream()
            .filter(a -> level.apply(a).isEmpty())
            .map(a -> a.capture().entry().unit())
            .collect(Collectors.toSet());
    List<AnchoredCapture> levels =
        accepted.stream()
            .filter(a -> !unknown.contains(a.capture().entry().unit()))
            .map(a -> withLevel(a, level.apply(a).getAsDouble()))
            .toList();
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
        sample.from().harmonicMean(),
        sample.from().variance(),
        mean);
  }

  /** Level at the anchor, dB SPL, at 1 V where any session notes its drive; nothing if unknown. */
  private static OptionalDouble levelDb(AnchoredCapture a, Session session, boolean driveNoted) {
    if (session == null || (driveNoted && session.setup().driveV().isEmpty())) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(a.anchorDb() - 20 * Math.log10(session.setup().driveV().orElse(1)));
  }

  /** A capture with its level at the anchor in place of its bands. */
  private static AnchoredCapture withLevel(AnchoredCapture pinned, double db) {
    return new AnchoredCapture(pinned.capture(), Levels.copyOf(ONE_BAND, new double[] {db}), 0);
  }

  /**
   * Variance of the shift of a graph averaged over so many seatings, about the mean shift, dB²: of
   * a new unit, and of the mean.
   */
  public double varianceDb2(double seatingsOfGraph) {
    double fewer = Math.max(0, 1 / seatingsOfGraph - 1 / seatings);
    return mean.tauSquared()
        + seatingVariance
        + mean.standardErrorDb() * mean.standardErrorDb()
        + seatVariance.orElse(0) * fewer;
  }

  /** How far a graph is moved in level by one study or several, with what is uncertain of that. */
  record Total(double db, Uncertainty uncertainty) {
    static final Total NONE = new Total(0, Uncertainty.NONE);

    /** With one study more, whose old fixture's seatings the graph averages so many of. */
    Total and(LevelShift next, double seatings) {
      return new Total(
          db + next.mean.meanDb(),
          uncertainty.and(next.varianceDb2(seatings), next.mean.degreesOfFreedom()));
    }
  }

  /** Half-width of the prediction interval of a unit seated as often as in the study: dB. */
  public double predictionHalfDb() {
    return StudentT.twoSided(mean.confidence(), mean.degreesOfFreedom())
        * Math.sqrt(varianceDb2(seatings));
  }
}
