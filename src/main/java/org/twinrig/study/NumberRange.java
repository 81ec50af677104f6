package org.twinrig.study;

/**
 * The numbers that a setting may be, wherever it is written: in study.yaml and in translation.json.
 *
 * @param includesLeast whether the lower end itself may be, as the upper one may
 * @param words what the number is, to follow "write"
 */
public record NumberRange(double least, boolean includesLeast, double most, String words) {
  /** More often wrong than right, or surer than a handful of units can be, is a slip. */
  public static final NumberRange CONFIDENCE =
      of(0.5, 0.9999, "a share from 0.5 to 0.9999, such as 0.95 for 95 %");

  /** Wider than any headphone is measured; keeps a slip in the units from passing. */
  public static final NumberRange HZ = of(1, 200_000, "a frequency in Hz from 1 to 200000");

  /** A limit of nothing is never met, and one of more than 100 dB limits nothing. */
  public static final NumberRange LIMIT_DB =
      new NumberRange(0, false, 100, "a number in dB above 0, at most 100");

  /** The range of {@link #HZ} has less than eighteen octaves. */
  public static final NumberRange OCTAVES = of(0, 20, "a number of octaves, 0 to 20");

  /** Fewer units than three give no estimate. */
  public static final NumberRange MIN_UNITS =
      of(Settings.FEWEST_UNITS, 1_000_000, "a whole number from 3 on");

  /** A range with both its ends. */
  public static NumberRange of(double least, double most, String words) {
    return new NumberRange(least, true, most, words);
  }

  /** Whether a number may be; NaN never. */
  public boolean holds(double number) {
    return (includesLeast ? number >= least : number > least) && number <= most;
  }
}
