package org.twinrig.spectrum;

import org.twinrig.internal.Numbers;

/** Can the samples be a sound at all: neither silent nor clipped. */
final class LevelCheck {
  /** One step below full scale in 16 bits; the coarsest scale that is read. */
  private static final double FULL_SCALE = 32_767.0 / 32_768;

  /** Two samples may touch full scale by chance; three in a row were cut (common practice). */
  private static final int CLIPPED_RUN = 3;

  private LevelCheck() {}

  static void check(Signal signal) throws UnusableSound {
    if (signal.peak(0, signal.size()) == 0) {
      throw new UnusableSound("every sample is zero", "export the channel that was recorded");
    }
    int run = 0;
    for (int i = 0; i < signal.size(); i++) {
      boolean same = i > 0 && Math.signum(signal.sample(i)) == Math.signum(signal.sample(i - 1));
      run = Math.abs(signal.sample(i)) < FULL_SCALE ? 0 : same ? run + 1 : 1;
      if (run == CLIPPED_RUN) {
        throw new UnusableSound(
            "the sound is clipped: "
                + Numbers.count(CLIPPED_RUN, "sample", "samples")
                + " in a row stand at full scale from sample "
                + (i + 2 - CLIPPED_RUN)
                + " on",
            "lower the level and measure again");
      }
    }
  }
}
