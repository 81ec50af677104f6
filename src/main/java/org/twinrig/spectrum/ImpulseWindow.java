package org.twinrig.spectrum;

import org.twinrig.internal.Checks;

/**
 * The window an impulse response is seen through: it opens before the onset, is flat, and closes
 * some time after; both ends are half a period of a raised cosine (Hann).
 *
 * <p>Its length sets the lowest frequency that can be told: the reciprocal of the time after the
 * onset.
 *
 * @param beforeOnsetMs from its start to the onset, ms; 0 or more
 * @param lengthMs from the onset to its end, ms; above 0
 * @param fadeMs how long each end takes, ms; from 0 to half of {@code lengthMs}; before the onset
 *     never longer than {@code beforeOnsetMs}
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
   * What holds where study.yaml says nothing: 2 ms before the onset, 200 ms after it, ends of 10
   * ms. It reaches down to 5 Hz.
   */
  public static ImpulseWindow defaults() {
    return new ImpulseWindow(2, 200, 10);
  }
}
