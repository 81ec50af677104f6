package org.twinrig.proof;

import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;

/**
 * Studies to try the finding of lost seals on.
 *
 * @param studies how many
 * @param seed starts every draw
 * @param units per kind
 * @param seatings per side and fixture
 * @param lostShare of the seatings on the new fixture
 */
public record SealPlan(int studies, long seed, int units, int seatings, double lostShare) {
  private static final SimulationPlan.Axis AXIS = new SimulationPlan.Axis(180, 10, 22_000);

  /** Checks the numbers. */
  public SealPlan {
    if (studies < 1 || units < 3 || seatings < 2) {
      throw new IllegalArgumentException(
          "at least 1 study, 3 units and 2 seatings are needed to find lost seals");
    }
    if (!(lostShare > 0 && lostShare < 1)) {
      throw new IllegalArgumentException("lostShare must lie between 0 and 1");
    }
  }

  /** A study in which every seal holds. */
  SimulationPlan sound(int study) {
    return SimulationPlan.standard()
        .withKinds(SimulatedKind.values())
        .withUnitsPerKind(units)
        .withSeatings(seatings)
        .withAxis(AXIS)
        .withTroubles(SimulationPlan.Troubles.none())
        .withSeed(seed + study);
  }

  /** The same study with lost seals, all of them noted. */
  SimulationPlan leaking(int study) {
    return sound(study).withTroubles(new SimulationPlan.Troubles(lostShare, lostShare, 1, 0, 0, 0));
  }
}
