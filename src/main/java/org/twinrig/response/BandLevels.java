package org.twinrig.response;

import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/**
 * The mean-square level of a response in each band.
 *
 * <p>{@code L_b = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} over the band from edge
 * {@code u1} to edge {@code u2}, where {@code L(u)} in dB is the response, piecewise linear in
 * {@code u}. Each piece is integrated in closed form: a piece from level {@code L0} to {@code L1}
 * over {@code Δu} contributes {@code Δu·10^(L0/10)·(e^z - 1)/z} with {@code z = (L1-L0)·ln(10)/10}.
 *
 * <p>A band that is not wholly inside the response's frequency range has no level.
 */
public final class BandLevels {
  private static final double NEPERS_PER_DB = Math.log(10) / 10;

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
      levels[b] = level(response, band, piece);
    }
    return Levels.copyOf(grid, levels);
  }

  /** Level of one band, whose lower edge lies on the given piece. */
  private static double level(Response response, Band band, int firstPiece) {
    // Powers are taken relative to the level at the lower edge, so that no level can overflow.
    double reference = response.between(firstPiece, band.lowerHz());
    double leftHz = band.lowerHz();
    double leftDb = reference;
    double integral = 0;
    for (int piece = firstPiece; leftHz < band.upperHz(); piece++) {
      double endHz = response.frequencyHz(piece + 1);
      double rightHz = Math.min(endHz, band.upperHz());
      double rightDb =
          endHz <= band.upperHz() ? response.levelDb(piece + 1) : response.between(piece, rightHz);
      double power = Math.exp(NEPERS_PER_DB * (leftDb - reference));
      double z = NEPERS_PER_DB * (rightDb - leftDb);
      integral += Math.log(rightHz / leftHz) * power * (z == 0 ? 1 : Math.expm1(z) / z);
      leftHz = rightHz;
      leftDb = rightDb;
    }
    return reference
        + Math.log(integral / Math.log(band.upperHz() / band.lowerHz())) / NEPERS_PER_DB;
  }
}
