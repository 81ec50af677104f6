package org.twinrig.study;

/**
 * A closed range of frequencies.
 *
 * @param fromHz lower end in Hz, above 0
 * @param toHz upper end in Hz, above {@code fromHz}
 */
public record FrequencyRange(double fromHz, double toHz) {

  public FrequencyRange {
    if (!(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
      throw new IllegalArgumentException(
          "a frequency range must satisfy 0 < from < to, but is " + fromHz + " to " + toHz + " Hz");
    }
  }

  /**
   * Whether a frequency lies in the range, ends included.
   *
   * @param hz the frequency in Hz
   */
  public boolean contains(double hz) {
    return hz >= fromHz && hz <= toHz;
  }
}
