package org.twinrig.spectrum;

import java.util.Locale;
import org.twinrig.internal.Checks;

/**
 * An exponential sine sweep as it was played, full scale: {@code x(t) = sin(2π f1 L (e^(t/L) - 1))}
 * with {@code L = T / ln(f2/f1)}, from {@code f1} up to {@code f2} in {@code T}. Its start rises
 * and its end falls as half a period of a raised cosine, in so many ms; 0 for none.
 *
 * <p>A harmonic of order {@code n} of a sweep is the sweep itself ahead by {@code L ln n}: after
 * deconvolution distortion lies that far ahead of the linear response.
 *
 * <p>Source: A. Farina, Simultaneous measurement of impulse response and distortion with a
 * swept-sine technique, 108th AES Convention, 2000, preprint 5093.
 */
public record Sweep(double fromHz, double toHz, double seconds, double fadeInMs, double fadeOutMs) {

  public Sweep {
    Checks.positive(fromHz, "from_hz");
    Checks.positive(toHz, "to_hz");
    Checks.positive(seconds, "seconds");
    Checks.notNegative(fadeInMs, "fade_in_ms");
    Checks.notNegative(fadeOutMs, "fade_out_ms");
    if (!(fromHz < toHz)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a sweep must rise, but runs from %s Hz to %s Hz", fromHz, toHz));
    }
    if (fadeInMs + fadeOutMs > 1000 * seconds) {
      throw new IllegalArgumentException("a sweep's fades must not be longer than the sweep");
    }
  }

  /**
   * How far the response to the harmonic of an order {@code n} (2 is the octave) lies ahead of the
   * linear one, {@code L ln n}.
   */
  public double leadMs(int order) {
    return 1000 * seconds / Math.log(toHz / fromHz) * Math.log(order);
  }

  /** The sweep from {@code t = 0} at so many samples per second, 1 at full scale. */
  public Signal signal(double rateHz) {
    double[] samples = new double[size(rateHz)];
    double scaleSeconds = seconds / Math.log(toHz / fromHz);
    for (int i = 0; i < samples.length; i++) {
      double t = i / rateHz;
      double phase = 2 * Math.PI * fromHz * scaleSeconds * Math.expm1(t / scaleSeconds);
      samples[i] =
          Math.sin(phase) * rise(1000 * t, fadeInMs) * rise(1000 * (seconds - t), fadeOutMs);
    }
    return Signal.of(samples, rateHz);
  }

  /** How many samples it has. */
  int size(double rateHz) {
    return (int) Math.max(1, Math.round(seconds * rateHz));
  }

  private static double rise(double ms, double fadeMs) {
    return ms >= fadeMs ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, ms) / fadeMs);
  }
}
