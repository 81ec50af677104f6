package org.twinrig.regression;

/**
 * The inner loops of {@link BlockDeletion}, each over {@code j = from..end-1}.
 *
 * <p>The compiler of JDK 17 makes vector instructions of such a loop only where every array is read
 * and written at the same index {@code j}: with offsets that differ, {@code to[t + j] -= x[at +
 * j]}, it cannot rule out that one step reads what an earlier one wrote. A loop of more than four
 * products is too long for it again. Both cost a factor of four; benchmark before changing them.
 */
final class Loops {
  private Loops() {}

  /** {@code to -= Σ factors[f..f+3]·x}, with the rows x from {@code first} on by {@code step}. */
  static void subtractFour(
      double[] to,
      double[][] rows,
      int first,
      int step,
      double[] factors,
      int f,
      int from,
      int end) {
    double[] x0 = rows[first];
    double[] x1 = rows[first + step];
    double[] x2 = rows[first + 2 * step];
    double[] x3 = rows[first + 3 * step];
    double a = factors[f];
    double b = factors[f + 1];
    double c = factors[f + 2];
    double d = factors[f + 3];
    for (int j = from; j < end; j++) {
      to[j] -= a * x0[j] + b * x1[j] + c * x2[j] + d * x3[j];
    }
  }

  /** {@code to = minuend - factor·x}. */
  static void difference(
      double[] to, double minuend, double[] x, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = minuend - factor * x[j];
    }
  }

  /** {@code to = minuend - factor·x}. */
  static void difference(
      double[] to, double[] minuend, double[] x, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = minuend[j] - factor * x[j];
    }
  }

  /** {@code to = minuend - left·right}. */
  static void difference(
      double[] to, double[] minuend, double[] left, double[] right, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = minuend[j] - left[j] * right[j];
    }
  }

  /** {@code to -= factor·x}. */
  static void subtractScaled(double[] to, double[] x, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] -= factor * x[j];
    }
  }

  /** {@code to -= left·right}. */
  static void subtractProduct(double[] to, double[] left, double[] right, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] -= left[j] * right[j];
    }
  }

  /** {@code to -= left·right + nextLeft·nextRight}. */
  static void subtractTwoProducts(
      double[] to,
      double[] left,
      double[] right,
      double[] nextLeft,
      double[] nextRight,
      int from,
      int end) {
    for (int j = from; j < end; j++) {
      to[j] -= left[j] * right[j] + nextLeft[j] * nextRight[j];
    }
  }

  /** {@code to = left·right}; may be one of them. */
  static void product(double[] to, double[] left, double[] right, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = left[j] * right[j];
    }
  }

  /** {@code to *= factor}. */
  static void multiply(double[] to, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] *= factor;
    }
  }

  /** {@code to = 1/x}. */
  static void invert(double[] to, double[] x, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = 1 / x[j];
    }
  }
}
