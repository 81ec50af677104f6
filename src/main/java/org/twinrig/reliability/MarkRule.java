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
    if (halfDb <= tolerance.reliable().atHz(midHz)) {
      return Mark.RELIABLE;
    }
    return halfDb <= tolerance.caution().atHz(midHz) ? Mark.CAUTION : Mark.UNRELIABLE;
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
    Mark mark = byWidth(settings.tolerance(), band.midHz(), fitted.prediction().halfDb());
    if (mark != Mark.RELIABLE) {
      reasons.addAll(whyWide(fitted));
    }
    Set<Reason> caps = caps(band);
    reasons.addAll(caps);
    if (!caps.isEmpty()) {
      mark = mark.worse(Mark.CAUTION);
    }
    if (fitted.units() < settings.minUnits()) {
      reasons.add(Reason.FEW_UNITS);
      mark = Mark.UNRELIABLE;
    }
    return new MarkedBand(fitted, mark, reasons);
  }

  private Set<Reason> caps(Band band) {
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
    for (ResonanceWander.Range range : wandering) {
      if (overlaps(band, range.fromHz(), range.toHz())) {
        caps.add(Reason.RESONANCE_WANDERS);
      }
    }
    return caps;
  }

  private static boolean overlaps(Band band, double fromHz, double toHz) {
    return band.lowerHz() < toHz && band.upperHz() > fromHz;
  }
}
