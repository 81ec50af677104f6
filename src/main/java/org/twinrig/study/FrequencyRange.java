package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.twinrig.band.Band;

/**
 * A closed range of frequencies.
 *
 * @param fromHz lower end in Hz, above 0
 * @param toHz upper end in Hz, above {@code fromHz}
 */
public record FrequencyRange(double fromHz, double toHz) {

  public FrequencyRange {
    if (!(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
      throw new IllegalArgumentException(
          "a frequency range must satisfy 0 < from < to, but is " + fromHz + " to " + toHz + " Hz");
    }
  }

  /**
   * Runs of adjacent bands that are as wanted, rising in frequency.
   *
   * @param bands adjacent and rising
   * @param wanted which of them count
   * @param band the band of one that counts
   */
  public static <T> List<FrequencyRange> runs(
      List<T> bands, Predicate<T> wanted, Function<T, Band> band) {
    List<FrequencyRange> runs = new ArrayList<>();
    boolean open = false;
    for (T each : bands) {
      boolean here = wanted.test(each);
      if (here) {
        double fromHz = open ? runs.remove(runs.size() - 1).fromHz : band.apply(each).lowerHz();
        runs.add(new FrequencyRange(fromHz, band.apply(each).upperHz()));
      }
      open = here;
    }
    return runs;
  }

  /**
   * Whether a frequency lies in the range, ends included.
   *
   * @param hz the frequency in Hz
   */
  public boolean contains(double hz) {
    return hz >= fromHz && hz <= toHz;
  }
}
