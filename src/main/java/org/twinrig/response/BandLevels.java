package org.twinrig.response;

import java.util.BitSet;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/**
 * The mean-square level of a response in each band.
 *
 * <p>{@code L_b = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} over the band from edge
 * {@code u1} to edge {@code u2}, where {@code L(u)} in dB is the response, piecewise linear in
 * {@code u}; integrated in closed form.
 *
 * <p>A band that is not wholly inside the response's frequency range has no level, nor has one that
 * a hole reaches into; where the points around and across a band are further apart than 1/6 octave
 * its level is coarse ({@link Response} says how far that is).
 */
public final class BandLevels {
  private BandLevels() {}

  /** One level per band of a grid, missing where the response did not measure the band. */
  public static Levels of(Response response, BandGrid grid) {
    double[] levels = new double[grid.size()];
    BitSet coarse = new BitSet();
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
      boolean hole = false;
      for (int p = piece; p == piece || response.frequencyHz(p) < band.upperHz(); p++) {
        hole |= response.isHole(p);
        coarse.set(b, coarse.get(b) || response.isCoarse(p));
      }
      levels[b] = hole ? Double.NaN : response.meanSquareDb(band.lowerHz(), band.upperHz(), piece);
    }
    return Levels.copyOf(grid, levels, coarse);
  }
}
