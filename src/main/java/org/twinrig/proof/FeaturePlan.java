package org.twinrig.proof;

import java.util.List;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;

/**
 * What studies to look for shared features in. Immutable; the same plan gives the same figures.
 *
 * @param studies how many studies to draw for each number of units and pair of fixtures, 1 or more
 * @param seed of everything random
 * @param unitsPerKind how many units of each kind enter; one or more different numbers
 * @param fixtures on which pairs of fixtures, each once
 * @param kinds which kinds, each once; with cups, so that canal entrances matter
 * @param seatings of every unit on each fixture, 1 or more
 */
public record FeaturePlan(
    int studies,
    long seed,
    List<Integer> unitsPerKind,
    List<FixturePair> fixtures,
    List<SimulatedKind> kinds,
    int seatings) {

  /** Fine enough to show what a 1/12-octave band holds. */
  private static final SimulationPlan.Axis AXIS = new SimulationPlan.Axis(240, 10, 22_000);

  /** Checks the numbers and copies the lists. */
  public FeaturePlan {
    unitsPerKind = List.copyOf(unitsPerKind);
    fixtures = List.copyOf(fixtures);
    kinds = List.copyOf(kinds);
    if (studies < 1 || seatings < 1) {
      throw new IllegalArgumentException("studies and seatings must be 1 or more");
    }
    if (unitsPerKind.isEmpty() || fixtures.isEmpty() || kinds.isEmpty()) {
      throw new IllegalArgumentException("units, fixtures and kinds must be named");
    }
    if (unitsPerKind.stream().anyMatch(n -> n < Settings.FEWEST_UNITS)) {
      throw new IllegalArgumentException("units must be 3 or more");
    }
  }

  /**
   * The plan of the published table but for the number of studies: 8, 12, 16 and 30 units each of
   * open and closed over-ear on every pair of fixtures, 5 seatings.
   *
   * @param studies how many studies to draw for each number of units and pair of fixtures
   * @param seed of everything random
   * @return the plan
   */
  public static FeaturePlan standard(int studies, long seed) {
    return new FeaturePlan(
        studies,
        seed,
        List.of(8, 12, 16, 30),
        List.of(FixturePair.values()),
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR),
        5);
  }

  /**
   * The same plan with other numbers of units.
   *
   * @param other one or more, each 3 or more
   * @return the changed plan
   */
  public FeaturePlan withUnitsPerKind(List<Integer> other) {
    return new FeaturePlan(studies, seed, other, fixtures, kinds, seatings);
  }

  /**
   * The same plan on other fixtures.
   *
   * @param other one or more pairs, each once
   * @return the changed plan
   */
  public FeaturePlan withFixtures(List<FixturePair> other) {
    return new FeaturePlan(studies, seed, unitsPerKind, other, kinds, seatings);
  }

  /** One study. */
  SimulatedStudy draw(FixturePair fixtures, int units, int study) {
    return SimulationPlan.standard()
        .withKinds(kinds.toArray(SimulatedKind[]::new))
        .withUnitsPerKind(units)
        .withSeatings(seatings)
        .withAxis(AXIS)
        .withSeed(ProofPlan.mixed(ProofPlan.mixed(ProofPlan.mixed(seed) ^ units) ^ study))
        .draw(fixtures);
  }
}
