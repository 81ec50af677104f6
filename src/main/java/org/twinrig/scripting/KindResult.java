package org.twinrig.scripting;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.PlanFigure;
import org.twinrig.report.figure.TransferFigure;
import org.twinrig.report.table.PlanResults;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.translation.LevelShift;

/** What a study found about one kind of headphone. Immutable. */
public final class KindResult {
  private final StudyOutcome outcome;
  private final KindOutcome kind;

  KindResult(StudyOutcome outcome, KindOutcome kind) {
    this.outcome = outcome;
    this.kind = kind;
  }

  public String kind() {
    return kind.kind();
  }

  /** The units the transfer rests on: in the order of the units table. */
  public List<PairedUnit> units() {
    return PairedUnit.of(kind.paired());
  }

  /** The units that the lab kept out of every fit ({@code role} {@code holdout}), if any. */
  public List<PairedUnit> heldOutUnits() {
    return new Pairing(outcome.study())
        .pair(outcome.screening().accepted(), Unit.Role.HOLDOUT).stream()
            .filter(p -> p.kind().equals(kind()))
            .flatMap(p -> PairedUnit.of(p).stream())
            .toList();
  }

  /** The transfer: one entry per band, rising in frequency. */
  public List<TransferBand> bands() {
    return kind.transfer().bands().stream().map(TransferBand::of).toList();
  }

  /**
   * The transfer at the band that holds a frequency in Hz.
   *
   * @throws IllegalArgumentException when the study has no such band; says where its bands are
   */
  public TransferBand at(double hz) {
    BandGrid grid = kind.transfer().grid();
    return bands().stream()
        .filter(b -> b.band().lowerHz() <= hz && hz < b.band().upperHz())
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "the study has no band at %s Hz; its bands lie from %s to %s"
                        .formatted(
                            hz, Numbers.hertz(grid.lowerHz()), Numbers.hertz(grid.upperHz()))));
  }

  /**
   * By how much the kind reads louder on the new fixture, dB over the anchor: a quantity beside the
   * transfer, which is about shape alone. Nothing where levels are not known on both fixtures.
   */
  public Optional<LevelShift> levelShift() {
    return outcome.levelShifts().stream().filter(s -> s.kind().equals(kind())).findFirst();
  }

  /** Runs of bands with the same mark: rising in frequency, without gaps. */
  public List<Zone> zones() {
    return kind.zones();
  }

  /** How much of the axis carries a mark. */
  public double octaves(Mark mark) {
    return kind.transfer().octaves(mark);
  }

  /**
   * How well units are predicted that a fit never saw: those of the study, each left out in turn.
   * Errors, and how often intervals held.
   */
  public Validation leftOut() {
    return kind.evidence().leftOut();
  }

  /** The same of the units the lab held out; without rows when there are none. */
  public Validation heldOut() {
    return kind.evidence().heldOut();
  }

  /**
   * How many units and seatings are needed for a half-width of single units, and where no number of
   * them is enough.
   *
   * @param toleranceDb the half-width to be reached at every band, dB, above 0
   * @param unitsMax the most units of the kind that can be captured; no fewer than the study has
   *     and asks for
   * @param seatingsMax the most seatings of a unit on either fixture, 2 or more
   * @throws IllegalArgumentException when a number is too small
   */
  public Plan plan(double toleranceDb, int unitsMax, int seatingsMax) {
    int present = kind.paired().units().size();
    if (unitsMax < present) {
      throw new IllegalArgumentException(
          "the study has %s units already, but at most %s are asked for"
              .formatted(present, unitsMax));
    }
    return Plan.of(
        kind.paired(),
        kind.estimate(),
        limits(toleranceDb, unitsMax, seatingsMax),
        outcome.study().settings().confidence());
  }

  private PlanLimits limits(double toleranceDb, int unitsMax, int seatingsMax) {
    Settings settings = outcome.study().settings();
    return new PlanLimits(
        DbLimit.everywhere(toleranceDb),
        settings.tolerance().equivalenceDb(),
        settings.minUnits(),
        unitsMax,
        seatingsMax);
  }

  /**
   * A plan drawn: the half-width of single units against the number of units, octave by octave.
   *
   * @throws IllegalArgumentException as for {@link #plan}, and when no band has an estimate
   */
  public Figure planFigure(double toleranceDb, int unitsMax, int seatingsMax) {
    Plan plan = plan(toleranceDb, unitsMax, seatingsMax);
    if (plan.zones().isEmpty()) {
      throw new IllegalArgumentException("no band has an estimate, so that there is no plan");
    }
    List<Integer> seatings = PlanResults.seatings(limits(toleranceDb, unitsMax, seatingsMax));
    return PlanFigure.of(plan, seatings, unitsMax, Caption.of(outcome, kind));
  }

  /** The mean transfer with its intervals and the mark strip, drawn as in the report. */
  public Figure figure() {
    return TransferFigure.of(kind, Caption.of(outcome, kind), outcome.study().settings().anchor());
  }
}
