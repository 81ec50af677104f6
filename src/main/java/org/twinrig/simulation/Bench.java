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
    return new Bench(
        hz,
        Chain.LoadedAxis.of(SimulatedFixture.plate(), hz),
        Chain.LoadedAxis.of(SimulatedFixture.head(), hz));
  }

  List<Chain.LoadedAxis> both() {
    return List.of(from, to);
  }
}
