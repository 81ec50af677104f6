package org.twinrig.simulation;

import java.util.List;

/**
 * The two fixtures of a simulated study, ready on one frequency axis.
 *
 * @param hz frequencies
 * @param from the old fixture
 * @param to the new fixture
 */
@SuppressWarnings("ArrayRecordComponent") // a kernel's working array, never compared
record Bench(double[] hz, Chain.LoadedAxis from, Chain.LoadedAxis to) {

  static Bench on(double[] hz) {
    return on(hz, FixturePair.PLATE_TO_HEAD);
  }

  static Bench on(double[] hz, FixturePair fixtures) {
    return new Bench(
        hz, Chain.LoadedAxis.of(fixtures.from(), hz), Chain.LoadedAxis.of(fixtures.to(), hz));
  }

  List<Chain.LoadedAxis> both() {
    return List.of(from, to);
  }
}
