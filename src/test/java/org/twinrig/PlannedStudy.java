package org.twinrig;

import org.twinrig.simulation.SimulationPlan;

/** Plans as tests want them. */
public final class PlannedStudy {
  private PlannedStudy() {}

  /** The same plan with other troubles. */
  public static SimulationPlan troubled(SimulationPlan plan, SimulationPlan.Troubles troubles) {
    return new SimulationPlan(
        plan.seed(),
        plan.groups(),
        plan.seatings(),
        plan.axis(),
        plan.bothSidesShare(),
        troubles,
        plan.formats(),
        plan.catalogueGraphs(),
        plan.falseClaims());
  }

  /** The same plan with so many held-out units in every kind. */
  public static SimulationPlan heldOut(SimulationPlan plan, int units) {
    return plan.withGroups(
        plan.groups().stream()
            .map(g -> new SimulationPlan.Group(g.kind(), g.fit(), units))
            .toList());
  }
}
