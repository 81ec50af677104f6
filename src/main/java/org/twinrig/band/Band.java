package org.twinrig.band;

/**
 * One fractional-octave band after IEC 61260-1:2014, base ten, as the half-open frequency range
 * {@code [lowerHz, upperHz)}.
 *
 * @param perOctave bands per octave {@code N}
 * @param index the band number {@code x} of clause 5.4; 0 is the band at (odd {@code N}) or next
 *     above (even {@code N}) 1 kHz
 * @param lowerHz lower edge in Hz, clause 5.7
 * @param midHz exact mid-band frequency in Hz, clause 5.4
 * @param upperHz upper edge in Hz, clause 5.7
 */
public record Band(int perOctave, int index, double lowerHz, double midHz, double upperHz) {

  /** The octave frequency ratio {@code G = 10^(3/10)}, IEC 61260-1:2014, 5.2. */
  public static final double OCTAVE_RATIO = Math.pow(10, 0.3);

  public Band {
    if (!(0 < lowerHz && lowerHz < midHz && midHz < upperHz && Double.isFinite(upperHz))) {
      throw new IllegalArgumentException(
          "band edges must satisfy 0 < lower < mid < upper, but are %s Hz, %s Hz and %s Hz"
              .formatted(lowerHz, midHz, upperHz));
    }
    if (perOctave < 1) {
      throw new IllegalArgumentException("bands per octave must be 1 or more: " + perOctave);
    }
  }

  /**
   * The band number {@code x} at {@code N} bands per octave: {@code f_m = 1000·G^(x/N)} for odd
   * {@code N} and {@code 1000·G^((2x+1)/(2N))} for even {@code N} (5.4), edges {@code
   * f_m·G^(±1/(2N))} (5.7).
   */
  public static Band ofIndex(int index, int perOctave) {
    double lower = 1000 * power(halfSteps(index, perOctave) - 1, perOctave);
    double mid = 1000 * power(halfSteps(index, perOctave), perOctave);
    // The upper edge is computed as the next band's lower one, so that neighbours meet exactly.
    double upper = 1000 * power(halfSteps(index, perOctave) + 1, perOctave);
    return new Band(perOctave, index, lower, mid, upper);
  }

  /**
   * The band whose exact mid-band frequency is nearest, on the logarithmic axis, to a frequency
   * above 0 Hz such as a nominal one.
   */
  public static Band ofMidFrequency(double hz, int perOctave) {
    if (!(hz > 0) || Double.isInfinite(hz)) {
      throw new IllegalArgumentException("a mid-band frequency must be above 0 Hz, but is " + hz);
    }
    double steps = Math.log10(hz / 1000) / 0.3 * perOctave;
    int index = (int) Math.round(perOctave % 2 != 0 ? steps : steps - 0.5);
    return ofIndex(index, perOctave);
  }

  /** Width of the band: octaves, {@code lb(upper/lower)}. */
  public double octaves() {
    return Math.log(upperHz / lowerHz) / Math.log(2);
  }

  /** Distance of the mid-band frequency from 1 kHz, in half band widths. */
  private static int halfSteps(int index, int perOctave) {
    return perOctave % 2 != 0 ? 2 * index : 2 * index + 1;
  }

  /** {@code G^(halfSteps/(2N))}. */
  private static double power(int halfSteps, int perOctave) {
    return Math.pow(10, 0.3 * halfSteps / (2.0 * perOctave));
  }
}
