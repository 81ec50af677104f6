package org.twinrig.reliability;

import java.util.Optional;
import org.twinrig.response.Levels;

/**
 * The strongest notch or peak of a curve.
 *
 * @param hz its frequency in Hz, refined by a parabola through three bands in (lg f, dB)
 * @param prominenceDb how far it stands out: the smaller of the two level changes to its
 *     surroundings, dB, above 0
 * @param widthOctaves its width at half prominence, octaves
 */
public record Resonance(double hz, double prominenceDb, double widthOctaves) {

  public enum Shape {
    NOTCH,
    PEAK
  }

  /**
   * Finds the most prominent local extreme; nothing when there is none of the least prominence or a
   * band of the curve has no level.
   *
   * <p>The prominence of a notch is measured on each side up to where the curve falls below it
   * again or ends; of the highest level on either side the lower one counts. A curve that only
   * rises or falls has none: its ends are where the search stopped, not features.
   */
  public static Optional<Resonance> strongest(Levels curve, Shape shape, double leastProminenceDb) {
    int n = curve.grid().size();
    if (curve.present() < n || n < 3) {
      return Optional.empty();
    }
    double[] depth = new double[n];
    for (int b = 0; b < n; b++) {
      depth[b] = shape == Shape.NOTCH ? curve.db(b) : -curve.db(b);
    }
    int best = -1;
    double bestProminence = 0;
    for (int b = 1; b < n - 1; b++) {
      if (depth[b] < depth[b - 1] && depth[b] <= depth[b + 1]) {
        double prominence = Math.min(rise(depth, b, -1), rise(depth, b, 1));
        if (prominence > bestProminence) {
          best = b;
          bestProminence = prominence;
        }
      }
    }
    return best < 0 || bestProminence < leastProminenceDb
        ? Optional.empty()
        : Optional.of(refined(curve, depth, best, bestProminence));
  }

  /** Greatest level above the minimum before the curve falls below it again, going one way. */
  private static double rise(double[] depth, int minimum, int step) {
    double highest = depth[minimum];
    for (int b = minimum + step; b >= 0 && b < depth.length; b += step) {
      if (depth[b] < depth[minimum]) {
        break;
      }
      highest = Math.max(highest, depth[b]);
    }
    return highest - depth[minimum];
  }

  private static Resonance refined(Levels curve, double[] depth, int b, double prominence) {
    double shiftBands = vertex(depth, b);
    int n = curve.grid().perOctave();
    double hz = curve.grid().band(b).midHz() * Math.pow(10, 0.3 * shiftBands / n);
    double bands = crossing(depth, b, -1, prominence / 2) + crossing(depth, b, 1, prominence / 2);
    return new Resonance(hz, prominence, bands * curve.grid().band(b).octaves());
  }

  /** Vertex of the parabola through three bands, at most half a band away; 0 where none is. */
  static double vertex(double[] curve, int at) {
    double left = curve[at - 1] - curve[at];
    double right = curve[at + 1] - curve[at];
    double shift = 0.5 * (left - right) / (left + right);
    return Math.abs(shift) <= 0.5 ? shift : 0;
  }

  /**
   * Distance in bands at which a curve has risen by a given amount from a minimum, going one way,
   * on straight lines between bands; infinite where it ends before.
   */
  static double crossing(double[] depth, int minimum, int step, double riseDb) {
    double target = depth[minimum] + riseDb;
    for (int b = minimum + step; b >= 0 && b < depth.length && !Double.isNaN(depth[b]); b += step) {
      if (depth[b] >= target) {
        double before = depth[b - step];
        return Math.abs(b - minimum) - 1 + (target - before) / (depth[b] - before);
      }
    }
    return Double.POSITIVE_INFINITY;
  }
}
