package org.twinrig.spectrum;

/**
 * The part of an impulse response under the window: the indices of its onset, of the first sample
 * under the window and of the one past the last, and how many samples each end takes at most.
 */
record Segment(Signal impulse, int onset, int from, int to, int fade) {

  static Segment of(Signal impulse, int onset, SoundContent content) {
    ImpulseWindow window = content.window();
    int from = Math.max(0, onset - impulse.samplesIn(content.beforeOnsetMs()));
    int to = (int) Math.min(impulse.size(), (long) onset + impulse.samplesIn(window.lengthMs()));
    return new Segment(impulse, onset, from, to, impulse.samplesIn(window.fadeMs()));
  }

  /** The same under a window that closes a quarter earlier. */
  Segment shorter() {
    return new Segment(impulse, onset, from, to - (to - onset) / 4, fade);
  }

  int size() {
    return to - from;
  }

  /** From the onset to the window's end. */
  double lengthMs() {
    return impulse.milliseconds(to - onset);
  }

  /** Samples of the rising end: none of them after the onset. */
  int fadeIn() {
    return Math.min(fade, onset - from);
  }

  /** Samples of the falling end: at most half of what follows the onset. */
  int fadeOut() {
    return Math.min(fade, (to - onset) / 2);
  }

  /** Writes the windowed samples, each less {@code offset}, to the start of an array. */
  void copyTo(double[] target, double offset) {
    for (int i = 0; i < size(); i++) {
      double weight = rise(i, fadeIn()) * rise(size() - 1 - i, fadeOut());
      target[i] = weight * (impulse.sample(from + i) - offset);
    }
  }

  private static double rise(int steps, int fade) {
    return steps >= fade ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * (steps + 0.5) / fade);
  }
}
