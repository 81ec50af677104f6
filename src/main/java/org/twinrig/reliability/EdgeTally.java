package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.BandGrid;

/**
 * Follows one edge of the study's zones through the resamples.
 *
 * <p>Call a band bad when its mark is at least as bad as that of the edge's worse side. In the
 * study the edge parts a run of bands that are not bad from a run of bad ones. In a resample it is
 * looked for from its place in the study: when the first band of the bad run is still bad, the edge
 * has moved, if at all, into the better run, up to the first band that is not bad; otherwise into
 * the bad run, up to the first that is. So it never jumps over another change of the marks, and an
 * edge that worsens upwards is never taken for one that improves.
 *
 * <p>An edge that reaches the far end of either run is not kept: that run has been swallowed.
 */
final class EdgeTally {
  /** Place of the edge in the study: the number of bands below it. */
  final int at;

  private final Mark[] zones;
  private final Mark worse;
  private final int betterEnd;
  private final int worseEnd;

  /** Step from the better to the worse side: 1 when marks worsen upwards, otherwise -1. */
  private final int step;

  private int added;
  private int kept;

  private EdgeTally(Mark[] zones, boolean[] empty, int at) {
    this.zones = zones;
    this.at = at;
    this.worse = zones[at - 1].worse(zones[at]);
    this.step = zones[at] == worse ? 1 : -1;
    this.worseEnd = runEnd(empty, step, true);
    this.betterEnd = runEnd(empty, -step, false);
  }

  /** One tally for each place where the marks of two bands with data differ. */
  static List<EdgeTally> of(Mark[] zones, boolean[] empty) {
    List<EdgeTally> edges = new ArrayList<>();
    for (int b = 1; b < zones.length; b++) {
      if (zones[b] != zones[b - 1] && !empty[b] && !empty[b - 1]) {
        edges.add(new EdgeTally(zones, empty, b));
      }
    }
    return edges;
  }

  private int runEnd(boolean[] empty, int direction, boolean bad) {
    int place = at;
    for (int b = band(place, direction);
        b >= 0 && b < zones.length && !empty[b] && bad(zones[b]) == bad;
        b = band(place, direction)) {
      place += direction;
    }
    return place;
  }

  /** The band next to a place on one side of it. */
  private static int band(int place, int direction) {
    return direction > 0 ? place : place - 1;
  }

  private boolean bad(Mark mark) {
    return mark.compareTo(worse) >= 0;
  }

  /** Counts one resample, its narrow runs joined; where the edge lies in it. */
  int add(Mark[] resample) {
    int place = at;
    if (bad(resample[band(place, step)])) {
      while (place != betterEnd && bad(resample[band(place, -step)])) {
        place -= step;
      }
    } else {
      while (place != worseEnd && !bad(resample[band(place, step)])) {
        place += step;
      }
    }
    added++;
    kept += place == betterEnd || place == worseEnd ? 0 : 1;
    return place;
  }

  /** The edge, with the share of the resamples that kept it. */
  ZoneEdge edge(BandGrid grid) {
    double hz = at < grid.size() ? grid.band(at).lowerHz() : grid.upperHz();
    return new ZoneEdge(hz, zones[at - 1], zones[at], (double) kept / added);
  }
}
