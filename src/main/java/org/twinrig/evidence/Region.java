package org.twinrig.evidence;

import java.util.Locale;
import org.twinrig.band.Band;

/** The parts of the frequency axis by which errors are reported. */
public enum Region {
  /** 20 Hz to 200 Hz: seal and leak. */
  BASS(20, 200),
  /** 200 Hz to 4 kHz. */
  MIDDLE(200, 4000),
  /** 4 kHz to 10 kHz: canal and concha resonances. */
  RESONANCES(4000, 10_000),
  /** 10 kHz to 20 kHz. */
  TOP(10_000, 20_000);

  private final double fromHz;
  private final double toHz;

  Region(double fromHz, double toHz) {
    this.fromHz = fromHz;
    this.toHz = toHz;
  }

  /** The region as files write it: for example {@code bass}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public double fromHz() {
    return fromHz;
  }

  public double toHz() {
    return toHz;
  }

  /** Whether a band counts here: its mid-band frequency lies in {@code [from, to)}. */
  public boolean holds(Band band) {
    return band.midHz() >= fromHz && band.midHz() < toHz;
  }
}
