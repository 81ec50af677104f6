package org.twinrig.reliability;

import java.util.Arrays;

/**
 * Joins runs of bands too narrow to be a zone to the worse of their neighbours.
 *
 * <p>The rule is that of {@link Zone#of}; it stands apart because it is applied to every redrawn
 * study as well, where only marks are known.
 */
final class NarrowRuns {
  /** Runs below this many octaves (in steps of G = 10^0.3) join the worse neighbour. */
  private static final double NARROW_OCTAVES = 1.0 / 6;

  private NarrowRuns() {}

  /**
   * Replaces the marks of narrow runs, in place, until none is left that may join.
   *
   * @param marks one per band, rising in frequency; changed
   * @param empty which bands have no data: they end a run, and never change
   * @param perOctave bands per octave
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
