package org.twinrig.simulation;

import java.util.List;
import org.twinrig.capture.Side;

/**
 * One headphone as built: its sides, and how each of them comes out on a fixture. Graphs of the
 * catalogue have numbers from 1,000,000 on.
 */
record Specimen(long seed, SimulatedKind kind, long number, List<Side> sides, Sampling sampling) {

  /** How specimens come from their kind. */
  enum Sampling {
    /** Independently of each other, as a lab gets them. */
    INDEPENDENT,
    /** Evenly spread, as a mean over the kind is best worked out. */
    EVEN
  }

  /** Numbers of units that are known by an old graph only. */
  static final long CATALOGUE = 1_000_000;

  /** Keeps the numbers of the two fixtures apart in an evenly spread population. */
  private static final int FIXTURE_PRIMES = 1000;

  SimulatedUnit built(Side side) {
    SimulatedUnit design = kind.ranges().draw(kind, draws(Purpose.UNIT, 0));
    return design.side(draws(Purpose.SIDE, sideKey(side)));
  }

  /** How a side comes out on a fixture; both sides share what the fixture does to the unit. */
  FittedUnit on(SimulatedFixture fixture, Side side, int fixtureKey) {
    return fixture.take(built(side), draws(Purpose.FIT, FIXTURE_PRIMES * fixtureKey));
  }

  /** The chance of one seating, for one side. */
  Placement placement(Side side, int fixtureKey, int seating) {
    long[] keys = {kind.key(), number, fixtureKey, seating};
    Placement placement = Placement.draw(Purpose.SEATING.draws(seed, keys));
    return side == Side.R
        ? placement.otherSide(Placement.draw(Purpose.OTHER_SIDE.draws(seed, keys)))
        : placement;
  }

  /** Evenly spread seatings of one side, for a mean over all seatings. */
  List<Placement> evenPlacements(Side side, int fixtureKey, int seatings) {
    return Placement.even(
        seatings, Purpose.TRUTH.draws(seed, kind.key(), number, fixtureKey, sideKey(side)));
  }

  private Draws draws(Purpose purpose, int which) {
    return sampling == Sampling.EVEN
        ? Draws.even(seed ^ kind.key(), number, purpose.firstPrimeAbove() + which)
        : purpose.draws(seed, kind.key(), number, which);
  }

  static int sideKey(Side side) {
    return side == Side.R ? 1 : 0;
  }
}
