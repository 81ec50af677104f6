package org.twinrig.spectrum;

/**
 * The part of an impulse response under the window: the indices of its onset, of the first sample
 * under the window and of the one past the last, and how many samples each end takes at most.
 */
record Segment(Signal impulse, int onset, int from, int to, int fade) {
  private static final double ONSET_SHARE_OF_PEAK = 0.1;

  /**
   * The index of the onset of an impulse response that is not silent: the first sample that comes
   * within 20 dB of the largest one. It is searched for {@code searchMs} ahead of the largest
   * sample and no further: a sweep's harmonics lie ahead, too, and must not be found.
   *
   * <p>Source: ISO 3382-1:2009 puts the start where the signal first rises significantly above the
   * background but is more than 20 dB below the maximum (from memory); samples before the threshold
   * stay in the window, which opens earlier.
   */
  static int onset(Signal impulse, double searchMs) {
    int peak = impulse.peakIndex();
    double threshold = ONSET_SHARE_OF_PEAK * Math.abs(impulse.sample(peak));
    int onset = (int) Math.max(0, peak - Math.floor(searchMs * impulse.rateHz() / 1000));
    while (Math.abs(impulse.sample(onset)) < threshold) {
      onset++;
    }
    return onset;
  }

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
