package org.twinrig.reliability;

import java.util.Optional;
import org.twinrig.internal.Checks;

/**
 * The edge between two adjacent zones, and where it may lie.
 *
 * <p>An edge is where marks as bad as those of its worse side begin. The ends of the grid and of
 * the bands that have data are no edges: no resample can move them.
 *
 * @param edgeHz where the study puts it, Hz
 * @param above mark of the zone above, another one
 * @param kept share of resamples that have it, 0 to 1: neither side has been swallowed
 * @param interval where it may lie, holding {@code edgeHz}; nothing when it is {@link #stable not
 *     stable}
 */
public record ZoneEdge(
    double edgeHz, Mark below, Mark above, double kept, Optional<ResonanceWander.Range> interval) {

  /** An edge that fewer resamples have than have not is no edge to be located. */
  static final double LEAST_KEPT = 0.5;

  public ZoneEdge {
    Checks.positive(edgeHz, "a zone's edge in Hz");
    if (below == above) {
      throw new IllegalArgumentException("an edge needs two marks, but both are " + below);
    }
    if (!(kept >= 0 && kept <= 1)) {
      throw new IllegalArgumentException("the share kept must be 0 to 1, but is " + kept);
    }
    if (interval.isPresent() != (kept >= LEAST_KEPT)) {
      throw new IllegalArgumentException("an interval is given for stable edges and no others");
    }
  }

  /** Whether at least half of the resamples have this edge: true when it has an interval. */
  public boolean stable() {
    return interval.isPresent();
  }
}
