package org.twinrig.regression;

/** The test a candidate has to pass before it replaces the offset. */
final class Gain {
  private Gain() {}

  /**
   * Whether {@code mean(g) > sd(g)/√n}.
   *
   * @param gains one per unit, dB²; only the first {@code n} count
   * @param n two or more
   */
  static boolean beyondOneStandardError(double[] gains, int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += gains[i];
    }
    double mean = sum / n;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      squares += (gains[i] - mean) * (gains[i] - mean);
    }
    return mean > Math.sqrt(squares / (n - 1) / n);
  }
}
