package org.twinrig.intake;

import org.twinrig.intake.Layout.FrequencyUnit;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** Can these numbers be hertz and decibels. */
final class Plausibility {
  /** Beyond this no level, gain or loss can be; common practice, no source. */
  static final double MOST_DB = 300;

  /**
   * A curve of a headphone goes far above 50 Hz, and one in kHz never gets there: nothing audible
   * is at 50 kHz.
   */
  private static final double LEAST_TOP_HZ = 50;

  /** No audio measurement reaches a megahertz. */
  private static final double MOST_HZ = 1e6;

  /** 2 Pa are 100 dB; a curve in dB that stays between 0 and 2 throughout would be a miracle. */
  private static final double MOST_LINEAR = 2;

  private Plausibility() {}

  /** Refuses what is likely in another unit than was understood. */
  static void check(Response response, Dialect dialect, boolean saysDb, Remarks remarks)
      throws UnusableInput {
    checkFrequencies(response, dialect, remarks);
    if (!saysDb && looksLinear(response)) {
      throw remarks.refuse(
          0,
          "all levels lie between 0 and 2, like pascals or volts",
          "export the level in dB, or write dB in the column's title if it is");
    }
  }

  private static void checkFrequencies(Response response, Dialect dialect, Remarks remarks)
      throws UnusableInput {
    String top = NumberText.plain(response.toHz());
    if (response.toHz() > MOST_HZ) {
      throw remarks.refuse(
          0,
          "the highest frequency is " + top + " Hz",
          dialect.frequencyUnit() == FrequencyUnit.KHZ
              ? "check the unit: the title says kHz, but the numbers may be Hz"
              : "frequencies are given in Hz");
    }
    if (response.toHz() < LEAST_TOP_HZ) {
      String title = dialect.columns().title(dialect.columns().frequency()).orElse("");
      if (!HeaderWords.of(title).saysHz()) {
        throw remarks.refuse(
            0,
            "the highest frequency is " + top + ", so the frequencies may be in kHz",
            "title the column Frequency (kHz), or Frequency (Hz) if they are in Hz");
      }
      remarks.note(0, "the highest frequency is only " + top + " Hz");
    }
  }

  private static boolean looksLinear(Response response) {
    boolean varies = false;
    for (int i = 0; i < response.size(); i++) {
      double level = response.levelDb(i);
      if (level <= 0 || level >= MOST_LINEAR) {
        return false;
      }
      varies |= level != response.levelDb(0);
    }
    return varies;
  }
}
