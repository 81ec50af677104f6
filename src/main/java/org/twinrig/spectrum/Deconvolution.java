package org.twinrig.spectrum;

import org.twinrig.internal.Numbers;

/**
 * A recorded sweep to the impulse response of what lay between: spectral division by the sweep
 * itself, {@code H = Y X* W / (|X|² + ε)}.
 *
 * <p>{@code Y} and {@code X} are the transforms of recording and sweep, zero-padded so that nothing
 * wraps round. {@code ε} is {@code 1e-8 max|X|²}: within the sweep's range, where {@code |X|²}
 * falls as {@code 1/f} by some 30 dB, it takes less than 0.001 dB; far outside it keeps noise from
 * being raised without bound. {@code W} falls from 1 to 0 over the sixth of an octave above the
 * sweep's end. Below its start the sweep still has energy and the division holds, so no step arises
 * there.
 *
 * <p>Division by the spectrum includes the amplitude correction that an inverse sweep needs (Farina
 * 2000, preprint 5093, where the envelope falls by 6 dB per octave). Harmonic distortion of order
 * {@code n} comes out {@code L ln n} ahead of the linear response, and the window leaves it out.
 */
final class Deconvolution {
  private static final double REGULARISATION = 1e-8;
  private static final double TAPER_OCTAVES = 1.0 / 6;

  /** 128 MB of numbers; 87 s of sweep and recording together at 96 kHz. */
  private static final int MOST_SAMPLES = 1 << 23;

  /** So much of a sweep may lie beyond the sampling rate's reach: none. */
  private static final double NYQUIST_SHARE = 0.5;

  private Deconvolution() {}

  /**
   * The impulse response; the recording's start is at index {@code lead}, the time before it in
   * front.
   */
  record Result(Signal impulse, int lead) {}

  static Result of(Signal recording, Sweep sweep) throws UnusableSound {
    double rateHz = recording.rateHz();
    check(recording, sweep);
    Signal played = sweep.signal(rateHz);
    int size = Fourier.lengthFor((long) recording.size() + played.size());
    double[] real = new double[size];
    double[] imaginary = new double[size];
    double mean = recording.mean();
    for (int i = 0; i < recording.size(); i++) {
      real[i] = recording.sample(i) - mean;
    }
    for (int i = 0; i < played.size(); i++) {
      imaginary[i] = played.sample(i);
    }
    Fourier.forward(real, imaginary);
    divide(real, imaginary, sweep.toHz(), rateHz);
    Fourier.inverse(real, imaginary);
    return new Result(Signal.of(rotated(real, played.size()), rateHz), played.size());
  }

  private static void check(Signal recording, Sweep sweep) throws UnusableSound {
    double rateHz = recording.rateHz();
    if (sweep.toHz() > NYQUIST_SHARE * rateHz) {
      throw new UnusableSound(
          "the sweep runs up to %s, but a sampling rate of %s reaches %s"
              .formatted(
                  Numbers.hertz(sweep.toHz()),
                  Numbers.hertz(rateHz),
                  Numbers.hertz(NYQUIST_SHARE * rateHz)),
          "give the recording as it was made, or correct `sweep.to_hz`");
    }
    if (recording.size() < sweep.seconds() * rateHz) {
      throw new UnusableSound(
          "the recording lasts %s s, less than the sweep of %s s"
              .formatted(
                  Numbers.fixed(recording.size() / rateHz, 2), Numbers.fixed(sweep.seconds(), 2)),
          "record the whole sweep and some time after it, or correct `sweep.seconds`");
    }
    if (recording.size() + sweep.seconds() * rateHz > MOST_SAMPLES) {
      throw new UnusableSound(
          "recording and sweep have more than "
              + MOST_SAMPLES
              + " samples together, the most that are read",
          "cut the recording to the sweep and a second after it");
    }
  }

  /**
   * Replaces the transform of {@code y + ix}, both real, by {@code H}: {@code Y[k] = (Z[k] +
   * Z*[N-k])/2} and {@code X[k] = (Z[k] - Z*[N-k])/2i}.
   */
  private static void divide(double[] real, double[] imaginary, double toHz, double rateHz) {
    int size = real.length;
    double floor = REGULARISATION * largestPower(real, imaginary);
    for (int k = 0; k <= size / 2; k++) {
      int mirror = (size - k) % size;
      double yReal = (real[k] + real[mirror]) / 2;
      double yImaginary = (imaginary[k] - imaginary[mirror]) / 2;
      double xReal = (imaginary[k] + imaginary[mirror]) / 2;
      double xImaginary = (real[mirror] - real[k]) / 2;
      double gain =
          taper(k * rateHz / size, toHz) / (xReal * xReal + xImaginary * xImaginary + floor);
      double hReal = gain * (yReal * xReal + yImaginary * xImaginary);
      double hImaginary = gain * (yImaginary * xReal - yReal * xImaginary);
      real[k] = hReal;
      imaginary[k] = k == mirror ? 0 : hImaginary;
      real[mirror] = hReal;
      imaginary[mirror] = k == mirror ? 0 : -hImaginary;
    }
  }

  private static double largestPower(double[] real, double[] imaginary) {
    double largest = 0;
    for (int k = 0; k <= real.length / 2; k++) {
      int mirror = (real.length - k) % real.length;
      double xReal = (imaginary[k] + imaginary[mirror]) / 2;
      double xImaginary = (real[mirror] - real[k]) / 2;
      largest = Math.max(largest, xReal * xReal + xImaginary * xImaginary);
    }
    return largest;
  }

  private static double[] rotated(double[] circular, int lead) {
    double[] line = new double[circular.length];
    System.arraycopy(circular, circular.length - lead, line, 0, lead);
    System.arraycopy(circular, 0, line, lead, circular.length - lead);
    return line;
  }

  /** The weight {@code W} of a frequency where the sweep ends at another. */
  private static double taper(double hz, double toHz) {
    double octaves = hz <= toHz ? 0 : Math.log(hz / toHz) / Math.log(2);
    double share = octaves / TAPER_OCTAVES;
    return share >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * share);
  }
}
