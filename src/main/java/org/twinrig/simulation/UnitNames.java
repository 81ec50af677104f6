package org.twinrig.simulation;

/** Invented names: a tree and a number. */
final class UnitNames {
  private static final String[] TREES = {
    "Alder",
    "Ash",
    "Aspen",
    "Beech",
    "Birch",
    "Cherry",
    "Chestnut",
    "Cypress",
    "Elder",
    "Elm",
    "Fir",
    "Hawthorn",
    "Hazel",
    "Holly",
    "Hornbeam",
    "Juniper",
    "Larch",
    "Laurel",
    "Linden",
    "Maple",
    "Medlar",
    "Mulberry",
    "Oak",
    "Pear",
    "Pine",
    "Plum",
    "Poplar",
    "Rowan",
    "Sloe",
    "Spindle",
    "Spruce",
    "Sycamore",
    "Walnut",
    "Whitebeam",
    "Willow",
    "Yew"
  };

  /** Shares no divisor with the number of trees, so that neighbours in a table differ. */
  private static final int TREE_STEP = 11;

  private static final int NUMBERS_PER_ROUND = 20;

  private UnitNames() {}

  /**
   * A name.
   *
   * @param index from 0; no two have the same name
   */
  static String of(int index) {
    int round = index / TREES.length;
    int number = 1 + index * 7 % 19 + NUMBERS_PER_ROUND * round;
    return TREES[index % TREES.length * TREE_STEP % TREES.length] + " " + number;
  }
}
