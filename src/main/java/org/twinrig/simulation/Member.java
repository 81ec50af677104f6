package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;

/**
 * A unit of the study as the lab has it, with the specimen behind it.
 *
 * @param turn when in the study it was measured, from 0
 * @param fixtures keys of the fixtures it was measured on: 0 the old one, 1 the new one
 */
record Member(Unit unit, Specimen specimen, int turn, List<Integer> fixtures) {
  /** Kinds with fewer units cannot spare one. */
  private static final int ENOUGH_TO_SPARE = 10;

  Member {
    fixtures = List.copyOf(fixtures);
  }

  /** Who is in a study, in what order, and on what each was measured. */
  static List<Member> all(SimulationPlan plan) {
    List<Member> members = new ArrayList<>();
    for (SimulationPlan.Group group : plan.groups()) {
      int size = group.fit() + group.holdout();
      for (int number = 0; number < size; number++) {
        members.add(member(plan, group, number, members.size()));
      }
    }
    return members;
  }

  private static Member member(
      SimulationPlan plan, SimulationPlan.Group group, int number, int index) {
    SimulatedKind kind = group.kind();
    Draws routine = Purpose.ROUTINE.draws(plan.seed(), kind.key(), number);
    boolean both = routine.chance(plan.bothSidesShare());
    boolean holdout = number >= group.fit();
    List<Side> sides = both ? List.of(Side.L, Side.R) : List.of(Side.M);
    String note = both ? "both sides measured" : "";
    Unit unit =
        new Unit(
            UnitNames.of(index),
            kind.label(),
            holdout ? Unit.Role.HOLDOUT : Unit.Role.FIT,
            "",
            note,
            index + 2);
    // Kinds take turns, so that no session belongs to one kind.
    int turn = number * plan.groups().size() + plan.groups().indexOf(group);
    Specimen specimen =
        new Specimen(plan.seed(), kind, number, sides, Specimen.Sampling.INDEPENDENT);
    return new Member(unit, specimen, turn, fixtures(plan, group, number));
  }

  private static List<Integer> fixtures(
      SimulationPlan plan, SimulationPlan.Group group, int number) {
    boolean spared = group.fit() >= ENOUGH_TO_SPARE && number < plan.troubles().oneFixtureUnits();
    return spared ? List.of((number + plan.groups().indexOf(group)) % 2) : List.of(0, 1);
  }
}
