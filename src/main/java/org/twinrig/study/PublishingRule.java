package org.twinrig.study;

import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Checks;

/**
 * When a re-expressed graph may be published.
 *
 * @param compared the range readers compare graphs by
 * @param lostOctaves more than this many octaves unreliable or missing inside that range call for a
 *     new measurement
 */
public record PublishingRule(FrequencyRange compared, double lostOctaves) {

  public PublishingRule {
    Checks.notNegative(lostOctaves, "lost_octaves");
  }

  /** From 100 Hz to 10 kHz, at most one octave. */
  public static PublishingRule standard() {
    return new PublishingRule(new FrequencyRange(100, 10_000), 1);
  }

  /** Whether a mid-band frequency lies in the range readers compare by. */
  public boolean compares(double hz) {
    return compared.contains(hz);
  }
}
