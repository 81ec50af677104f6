package org.twinrig.proof;

/**
 * Smooth random curves on a logarithmic frequency axis: a Gaussian process of mean 0 and standard
 * deviation 1 everywhere, made of white noise on knots under a moving Gaussian weight. Levels
 * {@code Δ} octaves apart have the correlation {@code exp(-Δ²/(4·length²))}, as nearly as the
 * knots, half a length apart, allow.
 */
final class SmoothCurves {
  private static final double REACH = 4;

  private final double[][] weights;
  private final int knots;

  /**
   * Curves on an axis.
   *
   * @param octaves where the points lie, rising
   * @param length of the moving weight, octaves, above 0
   */
  SmoothCurves(double[] octaves, double length) {
    double step = length / 2;
    double start = octaves[0] - REACH * length;
    double span = octaves[octaves.length - 1] + REACH * length - start;
    knots = (int) Math.ceil(span / step) + 1;
    weights = new double[octaves.length][knots];
    for (int i = 0; i < octaves.length; i++) {
      double squares = 0;
      for (int k = 0; k < knots; k++) {
        double away = (octaves[i] - start - k * step) / length;
        weights[i][k] = StrictMath.exp(-away * away / 2);
        squares += weights[i][k] * weights[i][k];
      }
      for (int k = 0; k < knots; k++) {
        weights[i][k] /= Math.sqrt(squares);
      }
    }
  }

  /** Adds a new curve, its standard deviation at every point as given in dB, to levels. */
  void addTo(double[] levels, double[] sdDb, Chance chance) {
    double[] noise = new double[knots];
    for (int k = 0; k < knots; k++) {
      noise[k] = chance.gaussian();
    }
    for (int i = 0; i < levels.length; i++) {
      double sum = 0;
      for (int k = 0; k < knots; k++) {
        sum += weights[i][k] * noise[k];
      }
      levels[i] += sdDb[i] * sum;
    }
  }
}
