package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;

/**
 * A unit of the study as the lab has it, with the specimen behind it. Its turn says when in the
 * study it was measured, from 0; keys of the fixtures it was measured on are 0 for the old one and
 * 1 for the new one.
 */
record Member(Unit unit, Specimen specimen, int turn, List<Integer> fixtures) {
  /** Kinds with fewer units cannot spare one. */
  private static final int ENOUGH_TO_SPARE = 10;

  private static final List<String> TREES =
      List.of(
          ("Alder Ash Aspen Beech Birch Cherry Chestnut Cypress Elder Elm Fir Hawthorn "
                  + "Hazel Holly Hornbeam Juniper Larch Laurel Linden Maple Medlar Mulberry Oak Pear "
                  + "Pine Plum Poplar Rowan Sloe Spindle Spruce Sycamore Walnut Whitebeam Willow Yew")
              .split(" "));

  /** Shares no divisor with the number of trees, so that neighbours in a table differ. */
  private static final int TREE_STEP = 11;

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
            unitName(index),
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

  /** An invented name for an index from 0, a tree and a number; no two have the same. */
  static String unitName(int index) {
    int number = 1 + index * 7 % 19 + 20 * (index / TREES.size());
    return TREES.get(index % TREES.size() * TREE_STEP % TREES.size()) + " " + number;
  }
}
