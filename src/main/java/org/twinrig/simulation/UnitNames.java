package org.twinrig.simulation;

import java.util.List;

/** Invented names: a tree and a number. */
final class UnitNames {
  private static final List<String> TREES =
      List.of(
          ("Alder Ash Aspen Beech Birch Cherry Chestnut Cypress Elder Elm Fir Hawthorn "
                  + "Hazel Holly Hornbeam Juniper Larch Laurel Linden Maple Medlar Mulberry Oak Pear "
                  + "Pine Plum Poplar Rowan Sloe Spindle Spruce Sycamore Walnut Whitebeam Willow Yew")
              .split(" "));

  /** Shares no divisor with the number of trees, so that neighbours in a table differ. */
  private static final int TREE_STEP = 11;

  private static final int NUMBERS_PER_ROUND = 20;

  private UnitNames() {}

  /** The name of an index from 0; no two have the same. */
  static String of(int index) {
    int round = index / TREES.size();
    int number = 1 + index * 7 % 19 + NUMBERS_PER_ROUND * round;
    return TREES.get(index % TREES.size() * TREE_STEP % TREES.size()) + " " + number;
  }
}
