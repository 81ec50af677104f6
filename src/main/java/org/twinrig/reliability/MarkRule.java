package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Fixture;
import org.twinrig.regression.BandOutcome;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;

/**
 * Marks bands.
 *
 * <ul>
 *   <li>{@code reliable} when the prediction half-width is at most the reliable tolerance, {@code
 *       caution} when at most the caution tolerance, otherwise {@code unreliable};
 *   <li>never better than {@code caution} outside the range either fixture's ear simulator is
 *       specified for, inside a declared zone, or where a resonance wanders;
 *   <li>{@code unreliable} with fewer units than the study asks for, or without an estimate.
 * </ul>
 *
 * <p>A band is outside a specified range when its mid-band frequency is (with the quarter band of
 * {@link BandGrid#holds}); it is inside a zone as soon as it overlaps it, because zones may only
 * lower a mark. What the variance is made of is given as a reason where the prediction is wide: it
 * says why.
 */
public final class MarkRule {
  private final Settings settings;
  private final List<Fixture> fixtures;
  private final List<ResonanceWander.Range> wandering;

  /**
   * The rule of one kind.
   *
   * @param settings the study's settings
   * @param fixtures both fixtures
   * @param wandering where the kind's resonances wander
   */
  public MarkRule(
      Settings settings, List<Fixture> fixtures, List<ResonanceWander.Range> wandering) {
    this.settings = settings;
    this.fixtures = List.copyOf(fixtures);
    this.wandering = List.copyOf(wandering);
  }

  /**
   * Marks the bands of a kind.
   *
   * @param outcomes one per band
   * @return the same with their marks
   */
  public List<MarkedBand> mark(List<BandOutcome> outcomes) {
    return outcomes.stream().map(this::mark).toList();
  }

  /**
   * The mark a prediction half-width earns by the tolerances alone.
   *
   * @param tolerance the study's tolerance
   * @param midHz the band's mid-band frequency, Hz
   * @param halfDb prediction half-width, dB
   * @return the mark
   */
  public static Mark byWidth(Tolerance tolerance, double midHz, double halfDb) {
    return byLimits(tolerance.reliable().atHz(midHz), tolerance.caution().atHz(midHz), halfDb);
  }

  private static Mark byLimits(double reliableDb, double cautionDb, double halfDb) {
    if (halfDb <= reliableDb) {
      return Mark.RELIABLE;
    }
    return halfDb <= cautionDb ? Mark.CAUTION : Mark.UNRELIABLE;
  }

  /**
   * What decides the mark of one band, its half-width and the wandering of resonances left open.
   *
   * @param reliableDb the reliable tolerance at the band, dB
   * @param cautionDb the caution tolerance at the band, dB
   * @param best the best mark the band may have: caution where capped by the range of an ear
   *     simulator or a declared zone, unreliable with too few units or no estimate
   */
  record Ladder(double reliableDb, double cautionDb, Mark best) {
    /**
     * The mark.
     *
     * @param halfDb prediction half-width, dB
     * @param wanders whether the band overlaps a zone in which a resonance wanders
     * @return the mark
     */
    Mark at(double halfDb, boolean wanders) {
      Mark mark = byLimits(reliableDb, cautionDb, halfDb).worse(best);
      return wanders ? mark.worse(Mark.CAUTION) : mark;
    }
  }

  /** What decides the mark of a band. */
  Ladder ladder(BandOutcome outcome) {
    boolean enough =
        outcome instanceof BandOutcome.Fitted && outcome.units() >= settings.minUnits();
    Mark best = fixedCaps(outcome.band()).isEmpty() ? Mark.RELIABLE : Mark.CAUTION;
    double midHz = outcome.band().midHz();
    return new Ladder(
        settings.tolerance().reliable().atHz(midHz),
        settings.tolerance().caution().atHz(midHz),
        enough ? best : Mark.UNRELIABLE);
  }

  /**
   * Why a prediction is wide.
   *
   * @param fitted the band's estimate
   * @return that it is, and what over half of the variance of the differences is: seating or units
   */
  public static List<Reason> whyWide(BandOutcome.Fitted fitted) {
    double seating = fitted.scatter().seatingVariance();
    double between = fitted.mean().tauSquared();
    if (seating == between) {
      return List.of(Reason.WIDE_PREDICTION);
    }
    return List.of(
        Reason.WIDE_PREDICTION, seating > between ? Reason.SEATING_SCATTER : Reason.UNITS_DISAGREE);
  }

  private MarkedBand mark(BandOutcome outcome) {
    if (outcome instanceof BandOutcome.Fitted fitted) {
      return markFitted(fitted);
    }
    Reason reason = outcome.units() == 0 ? Reason.NO_DATA : Reason.FEW_UNITS;
    return new MarkedBand(outcome, Mark.UNRELIABLE, List.of(reason));
  }

  private MarkedBand markFitted(BandOutcome.Fitted fitted) {
    Band band = fitted.band();
    List<Reason> reasons = new ArrayList<>();
    double halfDb = fitted.prediction().halfDb();
    if (byWidth(settings.tolerance(), band.midHz(), halfDb) != Mark.RELIABLE) {
      reasons.addAll(whyWide(fitted));
    }
    reasons.addAll(fixedCaps(band));
    boolean wanders = wandering.stream().anyMatch(r -> overlaps(band, r.fromHz(), r.toHz()));
    if (wanders) {
      reasons.add(Reason.RESONANCE_WANDERS);
    }
    if (fitted.units() < settings.minUnits()) {
      reasons.add(Reason.FEW_UNITS);
    }
    return new MarkedBand(fitted, ladder(fitted).at(halfDb, wanders), reasons);
  }

  /** Caps that do not depend on what the units showed. */
  private Set<Reason> fixedCaps(Band band) {
    Set<Reason> caps = EnumSet.noneOf(Reason.class);
    for (Fixture fixture : fixtures) {
      if (!BandGrid.holds(
          band.midHz(), fixture.specifiedFromHz(), fixture.specifiedToHz(), band.perOctave())) {
        caps.add(Reason.OUTSIDE_EAR_SIMULATOR_RANGE);
      }
    }
    for (DeclaredZone zone : settings.zones()) {
      if (overlaps(band, zone.fromHz(), zone.toHz())) {
        caps.add(Reason.DECLARED_ZONE);
      }
    }
    return caps;
  }

  static boolean overlaps(Band band, double fromHz, double toHz) {
    return band.lowerHz() < toHz && band.upperHz() > fromHz;
  }
}
