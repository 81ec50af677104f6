package org.twinrig.proof;

import java.util.List;
import java.util.SplittableRandom;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;

/**
 * What to try. Immutable; the same plan gives the same figures.
 *
 * @param studies how many studies to draw for each number of units, 2 or more
 * @param seed of everything random
 * @param unitsPerKind how many units of each kind enter the fit; one or more different numbers
 * @param kinds which kinds, each once
 * @param seatings of every unit on each fixture, 1 or more
 * @param unseenPerKind units of each kind that no fit sees, 1 or more
 * @param model what is tried beside the plain offset
 */
public record ProofPlan(
    int studies,
    long seed,
    List<Integer> unitsPerKind,
    List<SimulatedKind> kinds,
    int seatings,
    int unseenPerKind,
    PredictionModel model) {

  /** The least number of studies a standard error between studies can be taken from. */
  public static final int FEWEST_STUDIES = 2;

  /** Coarse enough to be quick; every band of the default grid lies wholly inside. */
  static final SimulationPlan.Axis AXIS = new SimulationPlan.Axis(120, 10, 22_000);

  /** Checks the numbers and copies the lists. */
  public ProofPlan {
    unitsPerKind = List.copyOf(unitsPerKind);
    kinds = List.copyOf(kinds);
    if (studies < FEWEST_STUDIES) {
      throw new IllegalArgumentException("studies must be 2 or more, but is " + studies);
    }
    if (seatings < 1 || unseenPerKind < 1) {
      throw new IllegalArgumentException("seatings and unseen units must be 1 or more");
    }
    for (int units : unitsPerKind) {
      if (units < Settings.FEWEST_UNITS) {
        throw new IllegalArgumentException("units must be 3 or more, but is " + units);
      }
    }
    if (unitsPerKind.isEmpty() || unitsPerKind.stream().distinct().count() < unitsPerKind.size()) {
      throw new IllegalArgumentException("each number of units must be named, and once");
    }
    if (kinds.isEmpty() || kinds.stream().distinct().count() < kinds.size()) {
      throw new IllegalArgumentException("each kind must be named, and once");
    }
  }

  /**
   * The plan of the published proof but for the number of studies: 8, 16 and 30 units each of open
   * over-ear, closed over-ear and in-ear, 5 seatings, 4 unseen units of each kind, the model the
   * program chooses.
   *
   * @param studies how many studies to draw for each number of units, 2 or more
   * @param seed of everything random
   * @return the plan
   */
  public static ProofPlan standard(int studies, long seed) {
    return new ProofPlan(
        studies,
        seed,
        List.of(8, 16, 30),
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR),
        5,
        4,
        PredictionModel.AUTO);
  }

  /**
   * The same plan with other numbers of units.
   *
   * @param other one or more different numbers, each 3 or more
   * @return the changed plan
   */
  public ProofPlan withUnitsPerKind(List<Integer> other) {
    return new ProofPlan(studies, seed, other, kinds, seatings, unseenPerKind, model);
  }

  /**
   * The same plan with other kinds.
   *
   * @param other one or more, each once
   * @return the changed plan
   */
  public ProofPlan withKinds(List<SimulatedKind> other) {
    return new ProofPlan(studies, seed, unitsPerKind, other, seatings, unseenPerKind, model);
  }

  /**
   * The same plan with another number of seatings.
   *
   * @param other 1 or more
   * @return the changed plan
   */
  public ProofPlan withSeatings(int other) {
    return new ProofPlan(studies, seed, unitsPerKind, kinds, other, unseenPerKind, model);
  }

  /**
   * The same plan with another model beside the offset.
   *
   * @param other any but the offset itself
   * @return the changed plan
   */
  public ProofPlan withModel(PredictionModel other) {
    return new ProofPlan(studies, seed, unitsPerKind, kinds, seatings, unseenPerKind, other);
  }

  /**
   * How many seatings the old graphs average: as many as in the study, and once a single one.
   *
   * @return one or two numbers
   */
  List<Integer> graphSeatings() {
    return seatings == 1 ? List.of(1) : List.of(seatings, 1);
  }

  /**
   * One study's plan.
   *
   * @param units of each kind that enter the fit
   * @param study its number, from 0
   */
  SimulationPlan simulation(int units, int study) {
    return SimulationPlan.standard()
        .withKinds(kinds.toArray(SimulatedKind[]::new))
        .withUnitsPerKind(units)
        .withHoldoutsPerKind(unseenPerKind)
        .withSeatings(seatings)
        .withAxis(AXIS)
        .withSeed(mixed(mixed(mixed(seed) ^ units) ^ study));
  }

  /** Neighbouring numbers give unrelated seeds. */
  static long mixed(long value) {
    return new SplittableRandom(value).nextLong();
  }
}
