package org.twinrig.simulation;

import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Anchor;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * Band levels, anchored as every capture is, of a unit's side on a fixture in the mean over good
 * seatings, free of noise.
 *
 * <p>The mean over seatings, not the level of the middle seating, is what many seatings tend to: a
 * leak's effect in decibels is skewed, so the two differ.
 */
@SuppressWarnings("ArrayRecordComponent") // a kernel's working array, never compared
record SeatingMean(double[] hz, BandGrid grid, Anchor anchor) {

  /** Mean over the given seatings, dB per band. */
  double[] levelsDb(Chain chain, FittedUnit fitted, List<Placement> placements) {
    double[] sum = new double[grid.size()];
    for (Placement placement : placements) {
      Levels levels = anchored(chain.levelsDb(fitted.seated(placement, FittedUnit.Seal.GOOD)));
      for (int b = 0; b < sum.length; b++) {
        sum[b] += levels.level(b).orElse(Double.NaN) / placements.size();
      }
    }
    return sum;
  }

  private Levels anchored(double[] levelsDb) {
    Response response = Response.copyOf(hz, levelsDb);
    double anchorDb =
        anchor
            .levelOf(response, grid.perOctave())
            .orElseThrow(
                () -> new IllegalArgumentException("the plan's axis does not reach the anchor"));
    return BandLevels.of(response, grid).map(level -> level - anchorDb);
  }
}
