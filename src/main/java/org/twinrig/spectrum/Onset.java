package org.twinrig.spectrum;

/**
 * Where an impulse response begins: the first sample that comes within 20 dB of the largest one.
 *
 * <p>Source: ISO 3382-1:2009 puts the start where the signal first rises significantly above the
 * background but is more than 20 dB below the maximum (from memory); samples before the threshold
 * stay in the window, which opens earlier.
 */
final class Onset {
  private static final double SHARE_OF_PEAK = 0.1;

  private Onset() {}

  /**
   * The index of the onset in an impulse response that is not silent. It is searched for {@code
   * searchMs} ahead of the largest sample and no further: a sweep's harmonics lie ahead, too, and
   * must not be found.
   */
  static int of(Signal impulse, double searchMs) {
    int peak = impulse.peakIndex();
    double threshold = SHARE_OF_PEAK * Math.abs(impulse.sample(peak));
    int onset = (int) Math.max(0, peak - Math.floor(searchMs * impulse.rateHz() / 1000));
    while (Math.abs(impulse.sample(onset)) < threshold) {
      onset++;
    }
    return onset;
  }
}
