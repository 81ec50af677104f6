package org.twinrig.simulation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.response.Response;

/**
 * A fixture with its ear load, at its reference plane, at each of some rising frequencies in Hz.
 */
@SuppressWarnings("ArrayRecordComponent") // a kernel's working arrays, never compared
record Bench(SimulatedFixture fixture, double[] hz, TwoPort.Wave[] load) {

  /** The old and the new fixture. */
  static List<Bench> both(FixturePair fixtures, double[] hz) {
    return Stream.of(fixtures.from(), fixtures.to()).map(f -> of(f, hz)).toList();
  }

  private static Bench of(SimulatedFixture fixture, double[] hz) {
    TwoPort.Wave[] load = new TwoPort.Wave[hz.length];
    Arrays.setAll(load, i -> fixture.load().at(2 * Math.PI * hz[i]));
    return new Bench(fixture, hz, load);
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
