package org.twinrig.spectrum;

import java.util.Optional;

/**
 * What a lab's sound files hold, and how they are to be looked at: recordings of the sweep that was
 * played or, without one, impulse responses, under a window.
 */
public record SoundContent(ImpulseWindow window, Optional<Sweep> sweep) {

  /** What holds where study.yaml says nothing: impulse responses, under the default window. */
  public static SoundContent defaults() {
    return new SoundContent(ImpulseWindow.defaults(), Optional.empty());
  }

  /**
   * How long before the onset the window opens. What a sweep's band limits leave behind rings as
   * long before the onset as after it, so there the window opens as early as it closes late, but
   * keeps half the lead of the second harmonic away from that harmonic.
   */
  public double beforeOnsetMs() {
    return sweep
        .map(played -> Math.min(window.lengthMs(), played.leadMs(2) / 2))
        .orElse(window.beforeOnsetMs());
  }
}
