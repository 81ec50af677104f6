package org.twinrig.regression;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Which bands count for a band: those within some width of it that have an estimate. At the ends of
 * the grid fewer do.
 */
public final class Neighbourhood {
  private final int[][] around;

  private Neighbourhood(int[][] around) {
    this.around = around;
  }

  /**
   * The neighbourhoods of a grid.
   *
   * @param reach whole bands to either side: of {@code N} bands per octave {@code N/6} are as far
   *     as weights and errors of neighbours are averaged
   */
  public static Neighbourhood of(int bands, IntPredicate estimated, int reach) {
    int[][] around = new int[bands][];
    Arrays.setAll(
        around,
        b ->
            IntStream.rangeClosed(Math.max(0, b - reach), Math.min(bands - 1, b + reach))
                .filter(estimated)
                .toArray());
    return new Neighbourhood(around);
  }

  /** The bands that count for a band, itself among them where it has an estimate. */
  int[] of(int band) {
    return around[band];
  }

  /** The mean of a quantity over the bands that count for a band; NaN where none does. */
  public double mean(int band, double[] values) {
    double sum = 0;
    for (int k : around[band]) {
      sum += values[k];
    }
    return sum / around[band].length;
  }
}
