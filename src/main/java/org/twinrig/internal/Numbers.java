package org.twinrig.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as texts, the same in every locale. */
public final class Numbers {
  private Numbers() {}

  /** Up to this size a scaled number is exact in a double. */
  private static final double EXACT = 1L << 52;

  private static final long[] POWERS_OF_TEN = {
    1, 10, 100, 1000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000
  };

  /**
   * A number with a fixed count of decimals, 0 to 8, and no minus sign before a zero, for example
   * {@code -0.25}.
   *
   * @throws IllegalArgumentException when the value is not finite: no output may carry NaN
   */
  public static String fixed(double value, int decimals) {
    Checks.finite(value, "a number to print");
    long scale = POWERS_OF_TEN[decimals];
    double scaled = Math.rint(Math.abs(value) * scale);
    if (scaled >= EXACT) {
      return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }
    long digits = (long) scaled;
    StringBuilder text = new StringBuilder(12);
    if (value < 0 && digits > 0) {
      text.append('-');
    }
    text.append(digits / scale);
    if (decimals > 0) {
      String fraction = Long.toString(digits % scale);
      text.append('.').append("0".repeat(decimals - fraction.length())).append(fraction);
    }
    return text.toString();
  }

  /**
   * A frequency above 0 Hz to three significant digits with its unit, as texts show it: {@code 31.5
   * Hz}, {@code 1.25 kHz}.
   */
  public static String hertz(double hz) {
    Checks.positive(hz, "a frequency in Hz");
    BigDecimal rounded = new BigDecimal(hz, new java.math.MathContext(3, RoundingMode.HALF_EVEN));
    if (rounded.compareTo(BigDecimal.valueOf(1000)) < 0) {
      return rounded.stripTrailingZeros().toPlainString() + " Hz";
    }
    return rounded.movePointLeft(3).stripTrailingZeros().toPlainString() + " kHz";
  }

  /**
   * A value printed so that it cannot contradict the verdict it stands in: on the same side of the
   * printed limit as the value is of the limit. When it exceeds the limit by less than the last
   * digit shows, it is rounded up.
   */
  public static String against(double value, double limit, int decimals) {
    String plain = fixed(value, decimals);
    boolean above = value > limit;
    boolean printedAbove =
        new BigDecimal(plain).compareTo(new BigDecimal(fixed(limit, decimals))) > 0;
    if (above && !printedAbove) {
      BigDecimal step = BigDecimal.ONE.movePointLeft(decimals);
      return new BigDecimal(fixed(limit, decimals)).add(step).toPlainString();
    }
    if (!above && printedAbove) {
      return fixed(limit, decimals);
    }
    return plain;
  }

  /** The English word for one or several: {@code 1 unit} or {@code 12 units}. */
  public static String count(long count, String one, String many) {
    return String.format(Locale.ROOT, "%d %s", count, count == 1 ? one : many);
  }
}
