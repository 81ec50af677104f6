package org.twinrig.reliability;

import org.twinrig.internal.Checks;

/**
 * The edge between two adjacent zones: where marks as bad as those of its worse side begin. The
 * ends of the grid and of the bands that have data are no edges: no resample can move them.
 *
 * @param edgeHz where the study puts it, Hz
 * @param above mark of the zone above, another one
 * @param kept share of resamples that have it, 0 to 1: neither side has been swallowed
 */
public record ZoneEdge(double edgeHz, Mark below, Mark above, double kept) {

  public ZoneEdge {
    Checks.positive(edgeHz, "a zone's edge in Hz");
    if (below == above) {
      throw new IllegalArgumentException("an edge needs two marks, but both are " + below);
    }
    if (!(kept >= 0 && kept <= 1)) {
      throw new IllegalArgumentException("the share kept must be 0 to 1, but is " + kept);
    }
  }
}
