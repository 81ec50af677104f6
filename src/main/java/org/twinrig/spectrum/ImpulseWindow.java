package org.twinrig.spectrum;

import org.twinrig.internal.Checks;

/**
 * The window an impulse response is seen through: it opens {@code beforeOnsetMs} (0 or more) before
 * the onset, is flat, and closes {@code lengthMs} (above 0) after it. Both ends are half a period
 * of a raised cosine (Hann) and take {@code fadeMs}: at most half of {@code lengthMs}, and before
 * the onset never longer than {@code beforeOnsetMs}.
 *
 * <p>Its length sets the resolution, and with it the lowest frequency that can be told: the
 * reciprocal of the time after the onset.
 */
public record ImpulseWindow(double beforeOnsetMs, double lengthMs, double fadeMs) {

  public ImpulseWindow {
    Checks.notNegative(beforeOnsetMs, "before_onset_ms");
    Checks.positive(lengthMs, "length_ms");
    Checks.notNegative(fadeMs, "fade_ms");
    if (fadeMs > lengthMs / 2) {
      throw new IllegalArgumentException("fade_ms must be at most half of length_ms");
    }
  }

  /**
   * What holds where study.yaml says nothing: 2 ms before the onset, 500 ms after it, ends of 10
   * ms. It tells apart what is 2 Hz apart: bands of 1/12 octave from 35 Hz on.
   */
  public static ImpulseWindow defaults() {
    return new ImpulseWindow(2, 500, 10);
  }
}
