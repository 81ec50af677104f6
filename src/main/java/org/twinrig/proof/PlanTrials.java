package org.twinrig.proof;

import java.util.List;
import java.util.SplittableRandom;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.internal.Checks;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Settings;

/**
 * How plans are tried: a small study is drawn and planned, then a study of the planned size.
 * Immutable; the same trials give the same figures.
 *
 * @param studies how many small studies to draw, 2 or more
 * @param seed of everything random
 * @param units of each kind in a small study, as many as a study asks for or more
 * @param seatings of every unit on each fixture in a small study, 2 or more
 * @param kinds which kinds, each once
 * @param toleranceDb the half-width to be reached, dB
 * @param unitsMax the most units a plan may ask for
 * @param seatingsMax the most seatings a plan may ask for
 */
public record PlanTrials(
    int studies,
    long seed,
    int units,
    int seatings,
    List<SimulatedKind> kinds,
    double toleranceDb,
    int unitsMax,
    int seatingsMax) {

  /** The most units a plan of the published proof may ask for. */
  public static final int MOST_UNITS = 40;

  /** Checks the numbers and copies the list. */
  public PlanTrials {
    kinds = List.copyOf(kinds);
    Checks.positive(toleranceDb, "the tolerance in dB");
    if (studies < ProofPlan.FEWEST_STUDIES
        || kinds.isEmpty()
        || kinds.stream().distinct().count() < kinds.size()) {
      throw new IllegalArgumentException("trials need two or more studies and kinds, each once");
    }
    if (units < Settings.defaults().minUnits() || unitsMax < units) {
      throw new IllegalArgumentException("units must be 5 or more, and no plan may have fewer");
    }
    if (seatings < PlanLimits.FEWEST_SEATINGS || seatingsMax < PlanLimits.FEWEST_SEATINGS) {
      throw new IllegalArgumentException("seatings must be 2 or more");
    }
  }

  /**
   * The trials of the published proof but for their number: studies of 8 units each of open
   * over-ear, closed over-ear and in-ear with 2 seatings, planned for 2 dB with up to 40 units and
   * 10 seatings.
   *
   * @param studies how many small studies to draw, 2 or more
   * @param seed of everything random
   * @return the trials
   */
  public static PlanTrials standard(int studies, long seed) {
    return new PlanTrials(
        studies,
        seed,
        8,
        2,
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR),
        2.0,
        MOST_UNITS,
        10);
  }

  /**
   * The same trials with other small studies.
   *
   * @param otherUnits of each kind
   * @param otherSeatings of every unit on each fixture
   * @return the changed trials
   */
  public PlanTrials withPilot(int otherUnits, int otherSeatings) {
    return new PlanTrials(
        studies, seed, otherUnits, otherSeatings, kinds, toleranceDb, unitsMax, seatingsMax);
  }

  /**
   * The same trials of other kinds.
   *
   * @param other one or more, each once
   * @return the changed trials
   */
  public PlanTrials withKinds(List<SimulatedKind> other) {
    return new PlanTrials(
        studies, seed, units, seatings, other, toleranceDb, unitsMax, seatingsMax);
  }

  /**
   * The same trials for another tolerance.
   *
   * @param otherDb the half-width to be reached, dB
   * @return the changed trials
   */
  public PlanTrials withTolerance(double otherDb) {
    return new PlanTrials(studies, seed, units, seatings, kinds, otherDb, unitsMax, seatingsMax);
  }

  PlanLimits limits() {
    return new PlanLimits(
        DbLimit.everywhere(toleranceDb),
        Settings.defaults().tolerance().equivalenceDb(),
        Settings.defaults().minUnits(),
        unitsMax,
        seatingsMax);
  }

  /** A small study of one kind. */
  SimulationPlan pilot(SimulatedKind kind, int study) {
    return simulation(kind, units, seatings, mixed(mixed(seed) ^ study) ^ kind.label().hashCode());
  }

  /**
   * The small study gone on with: the same units with further seatings, and further units. Draws
   * depend on what they are for, so that what was captured stays as it is.
   */
  SimulationPlan continued(SimulatedKind kind, int study, int allUnits, int allSeatings) {
    return pilot(kind, study).withUnitsPerKind(allUnits).withSeatings(allSeatings);
  }

  private static SimulationPlan simulation(SimulatedKind kind, int n, int m, long start) {
    return SimulationPlan.standard()
        .withKinds(kind)
        .withUnitsPerKind(n)
        .withSeatings(m)
        .withAxis(ProofPlan.AXIS)
        .withSeed(mixed(start));
  }

  /** Neighbouring numbers give unrelated seeds. */
  private static long mixed(long value) {
    return new SplittableRandom(value).nextLong();
  }
}
