package org.twinrig.reliability;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Unit;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;

/**
 * Marks bands.
 *
 * <ul>
 *   <li>{@code reliable} when the prediction half-width is at most the reliable tolerance, {@code
 *       caution} when at most the caution tolerance, otherwise {@code unreliable};
 *   <li>never better than {@code caution} outside the range either fixture is usable in, inside a
 *       declared zone, where a resonance wanders, or where the points of a capture are coarse;
 *   <li>{@code unreliable} with fewer units than the study asks for, without an estimate, or where
 *       no unit differs from any other.
 * </ul>
 *
 * <p>A band is outside a range when its mid-band frequency is (with the quarter band of {@link
 * BandGrid#holds}); it is inside a zone as soon as it overlaps it, because zones may only lower a
 * mark. What the variance is made of is given as a reason where the prediction is wide: it says
 * why.
 *
 * @param wandering where the kind's resonances wander
 * @param lacking what captures lack at a band, see {@link #on}
 */
public record MarkRule(
    Settings settings,
    List<Fixture> fixtures,
    List<FrequencyRange> wandering,
    Map<Band, Set<Reason>> lacking) {

  public MarkRule {
    fixtures = List.copyOf(fixtures);
    wandering = List.copyOf(wandering);
    lacking = Map.copyOf(lacking);
  }

  /**
   * The rule of one kind.
   *
   * <p>A band is of coarse points when those of any capture that counts are. One without scatter is
   * one where every unit was predicted without the others to better than 0.01 dB. A narrow anchor
   * makes units agree around it by itself; such bands are without scatter only where the kind
   * scatters nowhere: that their level is right follows from what an anchor is.
   */
  public MarkRule on(PairedUnits paired, KindEstimate estimate) {
    Map<Band, Set<Reason>> found = new HashMap<>();
    int bands = paired.grid().size();
    boolean anywhere = IntStream.range(0, bands).anyMatch(estimate::scatters);
    for (int b = 0; b < bands; b++) {
      Band band = paired.grid().band(b);
      Set<Reason> reasons = EnumSet.noneOf(Reason.class);
      if (paired.coarse(b)) {
        reasons.add(Reason.COARSE_POINTS);
      }
      if (!estimate.scatters(b) && !(anywhere && settings.anchor().pins(band))) {
        reasons.add(Reason.NO_SCATTER);
      }
      if (Unit.adaptive(paired.kind())) {
        reasons.add(Reason.ADAPTIVE);
      }
      found.put(band, reasons);
    }
    return new MarkRule(settings, fixtures, wandering, found);
  }

  public List<MarkedBand> mark(List<BandOutcome> outcomes) {
    return outcomes.stream().map(this::mark).toList();
  }

  /**
   * The mark a prediction half-width in dB earns at a mid-band frequency by the tolerances alone.
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
   * What decides the mark of one band, its half-width and the wandering of resonances left open:
   * both tolerances at the band, dB, and the best mark it may have.
   */
  record Ladder(double reliableDb, double cautionDb, Mark best) {
    /**
     * The mark at a prediction half-width, with or without a resonance that wanders across the
     * band.
     */
    Mark at(double halfDb, boolean wanders) {
      Mark mark = byLimits(reliableDb, cautionDb, halfDb).worse(best);
      return wanders ? mark.worse(Mark.CAUTION) : mark;
    }
  }

  Ladder ladder(BandOutcome outcome) {
    double midHz = outcome.band().midHz();
    return new Ladder(
        settings.tolerance().reliable().atHz(midHz),
        settings.tolerance().caution().atHz(midHz),
        outcome instanceof BandOutcome.Fitted ? Reason.best(caps(outcome)) : Mark.UNRELIABLE);
  }

  /**
   * Why a prediction is wide: that it is, and what over half of the variance of the differences is,
   * seating or units.
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
    if (!(outcome instanceof BandOutcome.Fitted fitted)) {
      Reason reason = outcome.units() == 0 ? Reason.NO_DATA : Reason.FEW_UNITS;
      return new MarkedBand(outcome, Mark.UNRELIABLE, List.of(reason));
    }
    Band band = fitted.band();
    double halfDb = fitted.prediction().halfDb();
    Mark byWidth = byWidth(settings.tolerance(), band.midHz(), halfDb);
    Set<Reason> reasons = caps(fitted);
    if (wandering.stream().anyMatch(r -> overlaps(band, r.fromHz(), r.toHz()))) {
      reasons.add(Reason.RESONANCE_WANDERS);
    }
    Mark mark = byWidth.worse(Reason.best(reasons));
    if (byWidth != Mark.RELIABLE) {
      reasons.addAll(whyWide(fitted));
    }
    return new MarkedBand(fitted, mark, List.copyOf(reasons));
  }

  /** Caps that depend neither on how wide a prediction is nor on resonances. */
  private Set<Reason> caps(BandOutcome outcome) {
    Band band = outcome.band();
    Set<Reason> caps = EnumSet.noneOf(Reason.class);
    caps.addAll(lacking.getOrDefault(band, Set.of()));
    for (Fixture fixture : fixtures) {
      if (fixture.usable().filter(range -> !range.holds(band)).isPresent()) {
        caps.add(Reason.OUTSIDE_USABLE_RANGE);
      }
      if (fixture.simulates().filter(range -> !range.holds(band)).isPresent()) {
        caps.add(Reason.NOT_EAR_LIKE);
      }
    }
    if (settings.zones().stream().anyMatch(z -> overlaps(band, z.fromHz(), z.toHz()))) {
      caps.add(Reason.DECLARED_ZONE);
    }
    if (outcome.units() < settings.minUnits()) {
      caps.add(Reason.FEW_UNITS);
    }
    return caps;
  }

  static boolean overlaps(Band band, double fromHz, double toHz) {
    return band.lowerHz() < toHz && band.upperHz() > fromHz;
  }
}
