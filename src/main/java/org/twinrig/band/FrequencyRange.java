package org.twinrig.band;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/** A closed range of frequencies: {@code 0 < fromHz < toHz}. */
public record FrequencyRange(double fromHz, double toHz) {

  public FrequencyRange {
    if (!(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
      throw new IllegalArgumentException(
          "a frequency range must satisfy 0 < from < to, but is " + fromHz + " to " + toHz + " Hz");
    }
  }

  /** Runs of those of adjacent, rising bands that are as wanted; each counts by its band. */
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

  /** Whether a band belongs to the range, under the rule of {@link BandGrid#holds}. */
  public boolean holds(Band band) {
    return BandGrid.holds(band.midHz(), fromHz, toHz, band.perOctave());
  }

  /** Whether a frequency lies in the range, ends included. */
  public boolean contains(double hz) {
    return hz >= fromHz && hz <= toHz;
  }
}
