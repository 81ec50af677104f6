package org.twinrig.spectrum;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/** The discrete Fourier transform, in place, of a length that is a power of two. */
final class Fourier {
  private Fourier() {}

  /** {@code X[k] = Σ x[n] e^(-2πi kn/N)}. */
  static void forward(double[] real, double[] imaginary) {
    transform(real, imaginary, TransformType.FORWARD);
  }

  /** {@code x[n] = 1/N Σ X[k] e^(2πi kn/N)}. */
  static void inverse(double[] real, double[] imaginary) {
    transform(real, imaginary, TransformType.INVERSE);
  }

  private static void transform(double[] real, double[] imaginary, TransformType type) {
    FastFourierTransformer.transformInPlace(
        new double[][] {real, imaginary}, DftNormalization.STANDARD, type);
  }

  /** The least power of two that is no less than a length. */
  static int lengthFor(long least) {
    return Math.toIntExact(Long.highestOneBit(Math.max(1, 2 * least - 1)));
  }
}
