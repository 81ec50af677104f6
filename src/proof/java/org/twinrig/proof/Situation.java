package org.twinrig.proof;

import java.util.function.Function;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;

/**
 * What is other than usual in the simulated laboratories. Any proof can be run in any situation
 * ({@link Harness#in}), and a table over several names them in a column.
 *
 * @param name as tables write it
 * @param draw makes the study of a plan; may change the plan before, or what comes of it
 */
record Situation(String name, Function<SimulationPlan, SimulatedStudy> draw) {
  /** A plate and a head, nothing goes wrong unless the plan says so. */
  static final Situation USUAL = on(FixturePair.PLATE_TO_HEAD);

  static Situation on(FixturePair fixtures) {
    return new Situation(fixtures.word(), plan -> plan.draw(fixtures));
  }
}
