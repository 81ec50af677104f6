package org.twinrig.response;

import java.util.Arrays;
import java.util.Locale;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * A frequency response: levels in dB at strictly rising frequencies in Hz, piecewise linear in (ln
 * f, dB) between the points and undefined outside them. Immutable, compared by content.
 */
public final class Response {
  private final double[] frequenciesHz;
  private final double[] levelsDb;

  private Response(double[] frequenciesHz, double[] levelsDb) {
    this.frequenciesHz = frequenciesHz;
    this.levelsDb = levelsDb;
  }

  /**
   * A response from its points.
   *
   * @param frequenciesHz strictly rising, above 0; copied
   * @param levelsDb as many finite levels; copied
   * @return the response
   * @throws IllegalArgumentException with fewer than two points, unequal lengths, a frequency that
   *     does not rise, or a number that is not finite
   */
  public static Response copyOf(double[] frequenciesHz, double[] levelsDb) {
    if (frequenciesHz.length != levelsDb.length || frequenciesHz.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a response needs two or more points, but has %d frequencies and %d levels",
              frequenciesHz.length,
              levelsDb.length));
    }
    for (int i = 0; i < frequenciesHz.length; i++) {
      Checks.positive(frequenciesHz[i], "a frequency in Hz");
      Checks.finite(levelsDb[i], "a level in dB");
      if (i > 0 && !(frequenciesHz[i] > frequenciesHz[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "frequencies must rise, but %s Hz follows %s Hz",
                frequenciesHz[i],
                frequenciesHz[i - 1]));
      }
    }
    return new Response(frequenciesHz.clone(), levelsDb.clone());
  }

  /**
   * How many points there are.
   *
   * @return 2 or more
   */
  public int size() {
    return frequenciesHz.length;
  }

  /**
   * The frequency of a point.
   *
   * @param point from 0
   * @return Hz
   */
  public double frequencyHz(int point) {
    return frequenciesHz[point];
  }

  /**
   * The level of a point.
   *
   * @param point from 0
   * @return dB
   */
  public double levelDb(int point) {
    return levelsDb[point];
  }

  /**
   * The lowest frequency.
   *
   * @return Hz
   */
  public double fromHz() {
    return frequenciesHz[0];
  }

  /**
   * The highest frequency.
   *
   * @return Hz
   */
  public double toHz() {
    return frequenciesHz[frequenciesHz.length - 1];
  }

  /**
   * The level at any frequency, linear in (ln f, dB) between points.
   *
   * @param hz a frequency in Hz, above 0
   * @return dB, or nothing outside the measured range
   */
  public OptionalDouble levelAt(double hz) {
    Checks.positive(hz, "a frequency in Hz");
    if (hz < fromHz() || hz > toHz()) {
      return OptionalDouble.empty();
    }
    int found = Arrays.binarySearch(frequenciesHz, hz);
    return OptionalDouble.of(found >= 0 ? levelsDb[found] : between(-found - 2, hz));
  }

  /**
   * The same curve shifted in level.
   *
   * @param shiftDb added to every level, finite
   * @return the shifted response
   */
  public Response plus(double shiftDb) {
    Checks.finite(shiftDb, "a shift in dB");
    return new Response(frequenciesHz, Arrays.stream(levelsDb).map(l -> l + shiftDb).toArray());
  }

  /** Level at {@code hz} on the piece that starts at point {@code left}. */
  double between(int left, double hz) {
    double span = Math.log(frequenciesHz[left + 1] / frequenciesHz[left]);
    double share = Math.log(hz / frequenciesHz[left]) / span;
    return levelsDb[left] + share * (levelsDb[left + 1] - levelsDb[left]);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Response that
        && Arrays.equals(frequenciesHz, that.frequenciesHz)
        && Arrays.equals(levelsDb, that.levelsDb);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(frequenciesHz) + Arrays.hashCode(levelsDb);
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "Response[%d points, %s Hz to %s Hz]", size(), fromHz(), toHz());
  }
}
