package org.twinrig.spectrum;

import java.util.Arrays;
import org.twinrig.response.Response;

/**
 * Leaves out points of a curve where the straight line (in ln f, dB) between those that stay passes
 * within 0.005 dB of every one left out. Two curves that differ nowhere by more than that have band
 * levels that differ by no more than that. A window of 500 ms gives some 250 thousand points; a
 * study has a thousand such curves.
 *
 * <p>One pass: from the last point that stays, the slopes that pass all points since within the
 * tolerance form an interval that only shrinks; when the next point's slope leaves it, the point
 * before stays.
 */
final class Thinning {
  static final double TOLERANCE_DB = 0.005;

  /** Points stay at most 1/48 octave apart, the finest band there is, so that each has its own. */
  private static final double MOST_SPAN = Math.log(2) / 48;

  private Thinning() {}

  static Response of(double[] frequenciesHz, double[] levelsDb) {
    int[] kept = new int[frequenciesHz.length];
    int count = 0;
    kept[count++] = 0;
    int anchor = 0;
    double least = Double.NEGATIVE_INFINITY;
    double most = Double.POSITIVE_INFINITY;
    for (int i = 1; i < frequenciesHz.length; i++) {
      double span = Math.log(frequenciesHz[i] / frequenciesHz[anchor]);
      double slope = (levelsDb[i] - levelsDb[anchor]) / span;
      if (i - 1 > anchor && (slope < least || slope > most || span > MOST_SPAN)) {
        anchor = i - 1;
        kept[count++] = anchor;
        span = Math.log(frequenciesHz[i] / frequenciesHz[anchor]);
        slope = (levelsDb[i] - levelsDb[anchor]) / span;
        least = Double.NEGATIVE_INFINITY;
        most = Double.POSITIVE_INFINITY;
      }
      least = Math.max(least, slope - TOLERANCE_DB / span);
      most = Math.min(most, slope + TOLERANCE_DB / span);
    }
    kept[count++] = frequenciesHz.length - 1;
    return Response.copyOf(picked(frequenciesHz, kept, count), picked(levelsDb, kept, count));
  }

  private static double[] picked(double[] all, int[] kept, int count) {
    return Arrays.stream(kept, 0, count).mapToDouble(i -> all[i]).toArray();
  }
}
