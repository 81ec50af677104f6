package org.twinrig.evidence;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Adjusts p values so that the chance of a single wrong claim among several tests stays at the
 * level of one, however the tests depend on each other.
 *
 * <p>The smallest of {@code m} values is multiplied by {@code m}, the next by {@code m-1}, and so
 * on; none may fall below one before it, and none exceeds 1.
 *
 * <p>Source: Holm 1979, Scand. J. Statist. 6:65.
 */
final class Holm {
  private Holm() {}

  static double[] adjusted(double... p) {
    for (double value : p) {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException("a p value lies between 0 and 1, but is " + value);
      }
    }
    int[] rising =
        IntStream.range(0, p.length)
            .boxed()
            .sorted(Comparator.comparingDouble(k -> p[k]))
            .mapToInt(k -> k)
            .toArray();
    double[] adjusted = new double[p.length];
    double least = 0;
    for (int rank = 0; rank < rising.length; rank++) {
      least = Math.max(least, Math.min(1, (p.length - rank) * p[rising[rank]]));
      adjusted[rising[rank]] = least;
    }
    return adjusted;
  }
}
