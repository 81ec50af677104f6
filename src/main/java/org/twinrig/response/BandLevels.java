package org.twinrig.response;

import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/**
 * The mean-square level of a response in each band.
 *
 * <p>{@code L_b = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} over the band from edge
 * {@code u1} to edge {@code u2}, where {@code L(u)} in dB is the response, piecewise linear in
 * {@code u}; integrated in closed form.
 *
 * <p>A band that is not wholly inside the response's frequency range has no level.
 */
public final class BandLevels {
  private BandLevels() {}

  /**
   * Levels of a response on a grid.
   *
   * @param response the curve
   * @param grid the bands
   * @return one level per band in dB, missing where the response does not cover the band
   */
  public static Levels of(Response response, BandGrid grid) {
    double[] levels = new double[grid.size()];
    int piece = 0;
    for (int b = 0; b < levels.length; b++) {
      Band band = grid.band(b);
      if (band.lowerHz() < response.fromHz() || band.upperHz() > response.toHz()) {
        levels[b] = Double.NaN;
        continue;
      }
      while (response.frequencyHz(piece + 1) <= band.lowerHz()) {
        piece++;
      }
      levels[b] = MeanSquare.levelDb(response, band.lowerHz(), band.upperHz(), piece);
    }
    return Levels.copyOf(grid, levels);
  }
}
