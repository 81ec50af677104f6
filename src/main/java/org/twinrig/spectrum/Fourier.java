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

  /** After this many turns by one step the turning factor is worked out anew. */
  private static final int STEPS_BEFORE_ANEW = 64;

  /**
   * {@code |X[k]|²} of a real sequence, for {@code k} from 0 to N/2; N is a power of two, 4 or
   * more.
   *
   * <p>Even and odd samples go through one complex transform of half the length as real and
   * imaginary part, {@code Z}; then {@code X[k] = E[k] + e^(-2πi k/N)·O[k]} with {@code E[k] =
   * (Z[k] + Z*[M-k])/2}, {@code O[k] = (Z[k] - Z*[M-k])/2i}, {@code M = N/2} (Press et al.,
   * Numerical Recipes, 3rd ed., 12.3.2, from memory).
   */
  static double[] powers(double[] x) {
    int half = x.length / 2;
    double[] real = new double[half];
    double[] imaginary = new double[half];
    for (int n = 0; n < half; n++) {
      real[n] = x[2 * n];
      imaginary[n] = x[2 * n + 1];
    }
    forward(real, imaginary);
    double[] powers = new double[half + 1];
    double stepCos = Math.cos(Math.PI / half);
    double stepSin = -Math.sin(Math.PI / half);
    double cos = 1;
    double sin = 0;
    for (int k = 0; k <= half; k++) {
      if (k % STEPS_BEFORE_ANEW == 0) {
        cos = Math.cos(Math.PI * k / half);
        sin = -Math.sin(Math.PI * k / half);
      }
      int here = k % half;
      int there = (half - k) % half;
      double evenRe = (real[here] + real[there]) / 2;
      double evenIm = (imaginary[here] - imaginary[there]) / 2;
      double oddRe = (imaginary[here] + imaginary[there]) / 2;
      double oddIm = (real[there] - real[here]) / 2;
      double re = evenRe + cos * oddRe - sin * oddIm;
      double im = evenIm + cos * oddIm + sin * oddRe;
      powers[k] = re * re + im * im;
      double turned = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = turned;
    }
    return powers;
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
