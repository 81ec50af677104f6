package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A run of adjacent bands with the same mark.
 *
 * <p>Its reasons are those of its bands, in the order of {@link Reason}; an empty one has no data
 * at all.
 */
public record Zone(double fromHz, double toHz, Mark mark, boolean empty, List<Reason> reasons) {

  /** Runs below this many octaves (in steps of G = 10^0.3) join the worse neighbour. */
  private static final double NARROW_OCTAVES = 1.0 / 6;

  public Zone {
    reasons = List.copyOf(reasons);
    if (!(0 < fromHz && fromHz < toHz)) {
      throw new IllegalArgumentException("zone edges must satisfy 0 < from < to");
    }
  }

  /** Width of the zone: octaves, {@code lb(to/from)}. */
  public double octaves() {
    return Math.log(toHz / fromHz) / Math.log(2);
  }

  /**
   * The zones of adjacent bands, rising in frequency, without gaps.
   *
   * <p>Runs narrower than 1/6 octave join the worse of their neighbours and take its mark. A narrow
   * run that is worse than both its neighbours stands as it is, since joining would hide it, and so
   * does a run without data.
   */
  public static List<Zone> of(List<MarkedBand> bands) {
    if (bands.isEmpty()) {
      return List.of();
    }
    Mark[] marks = bands.stream().map(MarkedBand::mark).toArray(Mark[]::new);
    boolean[] empty = emptyOnes(bands);
    join(marks, empty, bands.get(0).band().perOctave());
    List<Zone> zones = new ArrayList<>();
    for (int start = 0; start < marks.length; ) {
      int end = end(marks, empty, start);
      zones.add(of(bands.subList(start, end), marks[start]));
      start = end;
    }
    return zones;
  }

  private static Zone of(List<MarkedBand> run, Mark mark) {
    List<Reason> reasons =
        run.stream().flatMap(b -> b.reasons().stream()).distinct().sorted().toList();
    return new Zone(
        run.get(0).band().lowerHz(),
        run.get(run.size() - 1).band().upperHz(),
        mark,
        run.get(0).empty(),
        reasons);
  }

  static boolean[] emptyOnes(List<MarkedBand> bands) {
    boolean[] empty = new boolean[bands.size()];
    for (int b = 0; b < empty.length; b++) {
      empty[b] = bands.get(b).empty();
    }
    return empty;
  }

  /**
   * Replaces the marks of narrow runs, in place, until none is left that may join.
   *
   * @param marks one per band, rising in frequency; changed
   * @param empty which bands have no data: they end a run, and never change
   */
  static void join(Mark[] marks, boolean[] empty, int perOctave) {
    for (int start = 0; start < marks.length; ) {
      int end = end(marks, empty, start);
      boolean narrow = (double) (end - start) / perOctave < NARROW_OCTAVES - 1e-9;
      Mark worse =
          narrow && !empty[start] ? worseNeighbour(marks, empty, start, end) : marks[start];
      if (worse.compareTo(marks[start]) > 0) {
        Arrays.fill(marks, start, end, worse);
        start = 0; // A joined run may have made the first of its neighbours wide, or itself join.
      } else {
        start = end;
      }
    }
  }

  /** The end, exclusive, of the run that a band begins. */
  static int end(Mark[] marks, boolean[] empty, int start) {
    int end = start + 1;
    while (end < marks.length && marks[end] == marks[start] && empty[end] == empty[start]) {
      end++;
    }
    return end;
  }

  /** The worse mark among the neighbours that have data; the run's own when none has. */
  private static Mark worseNeighbour(Mark[] marks, boolean[] empty, int start, int end) {
    boolean below = start > 0 && !empty[start - 1];
    boolean above = end < marks.length && !empty[end];
    if (below && above) {
      return marks[start - 1].worse(marks[end]);
    }
    return below ? marks[start - 1] : above ? marks[end] : marks[start];
  }
}
