package org.twinrig.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Which bands count when a rule is chosen for a band: those within 1/6 octave with an estimate. */
final class Neighbourhood {
  private final int[][] around;

  private Neighbourhood(int[][] around) {
    this.around = around;
  }

  /**
   * The neighbourhoods of a grid.
   *
   * @param errors one entry per band, empty where it has no estimate
   */
  static Neighbourhood of(List<Optional<BandErrors>> errors, int perOctave) {
    int reach = perOctave / 6;
    int[][] around = new int[errors.size()][];
    Arrays.setAll(
        around,
        b ->
            IntStream.rangeClosed(Math.max(0, b - reach), Math.min(errors.size() - 1, b + reach))
                .filter(k -> errors.get(k).isPresent())
                .toArray());
    return new Neighbourhood(around);
  }

  /** The bands that count for a band, itself among them where it has an estimate. */
  int[] of(int band) {
    return around[band];
  }
}
