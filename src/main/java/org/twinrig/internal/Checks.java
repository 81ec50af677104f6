package org.twinrig.internal;

import java.util.Locale;

/** Argument checks whose messages name the quantity, the rule and the value. */
public final class Checks {
  private Checks() {}

  /** Refuses NaN and infinities; the name of the quantity has its unit, here and below. */
  public static double finite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be a finite number, but is " + value);
    }
    return value;
  }

  /** Refuses everything but finite numbers above zero. */
  public static double positive(double value, String name) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " must be above 0, but is " + value);
    }
    return value;
  }

  /** Refuses everything but finite numbers of zero or more. */
  public static double notNegative(double value, String name) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " must be 0 or more, but is " + value);
    }
    return value;
  }

  /** Refuses everything outside the open interval from 0 to 1, such as a confidence. */
  public static double fraction(double value, String name) {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%s must lie between 0 and 1, but is %s", name, value));
    }
    return value;
  }
}
