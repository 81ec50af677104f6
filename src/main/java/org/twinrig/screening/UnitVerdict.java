package org.twinrig.screening;

import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;

/**
 * A unit whose difference between the fixtures departs from that of its kind. It is never left out
 * by a rule: it may be what the kind is really like. The mid-band frequency in Hz at which it
 * departs most, its difference minus the mean of the other units', dB, and the same over its
 * standard error, {@code |t|}, which exceeds the limit.
 */
public record UnitVerdict(
    String kind, String unit, double bandHz, double departureDb, double value, double limit) {

  public static final String WORD = "unit outlier";

  public UnitVerdict {
    Checks.positive(bandHz, "a mid-band frequency in Hz");
    Checks.finite(departureDb, "a departure in dB");
    Checks.finite(value, "a screening value");
    Checks.finite(limit, "a screening limit");
  }

  /**
   * The verdict as a sentence that cannot contradict itself by rounding.
   *
   * @return for example {@code unit outlier: at 3.15 kHz the difference between the fixtures is 6.2
   *     dB above the mean of the other units, 18.3 times its standard error, but at most 9.8 times
   *     is allowed}
   */
  public String sentence() {
    return String.format(
        "%s: at %s the difference between the fixtures is %s dB %s the mean of the other units, %s"
            + " times its standard error, but at most %s times is allowed",
        WORD,
        Numbers.hertz(bandHz),
        Numbers.fixed(Math.abs(departureDb), 1),
        departureDb > 0 ? "above" : "below",
        Numbers.against(value, limit, 1),
        Numbers.fixed(limit, 1));
  }
}
