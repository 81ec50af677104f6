package org.twinrig.simulation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.response.Response;

/** The old and the new fixture of a simulated study, ready on one frequency axis in Hz. */
@SuppressWarnings("ArrayRecordComponent") // a kernel's working array, never compared
record Bench(double[] hz, Chain.LoadedAxis from, Chain.LoadedAxis to) {

  static Bench on(double[] hz, FixturePair fixtures) {
    return new Bench(
        hz, Chain.LoadedAxis.of(fixtures.from(), hz), Chain.LoadedAxis.of(fixtures.to(), hz));
  }

  List<Chain.LoadedAxis> both() {
    return List.of(from, to);
  }

  /** What a file holds of levels on the axis when it goes only from one frequency to another. */
  Response response(double[] levels, double fromHz, double toHz) {
    int[] kept =
        IntStream.range(0, hz.length).filter(i -> hz[i] >= fromHz && hz[i] <= toHz).toArray();
    return Response.copyOf(
        Arrays.stream(kept).mapToDouble(i -> hz[i]).toArray(),
        Arrays.stream(kept).mapToDouble(i -> levels[i]).toArray());
  }
}
