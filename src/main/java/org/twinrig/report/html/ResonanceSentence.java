package org.twinrig.report.html;

import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.ResonanceWander;

/** How far a kind's strongest notch or peak moves between the fixtures. */
final class ResonanceSentence {
  /** The limit of {@link ResonanceWander}: one band of a twelfth of an octave. */
  private static final double LIMIT_OCTAVES = 1.0 / 12;

  private ResonanceSentence() {}

  static String of(String kind, ResonanceWander w) {
    return VerdictSentence.capital(kind)
        + ": on "
        + Numbers.count(w.positions().size(), "unit", "units")
        + " the strongest "
        + w.shape().name().toLowerCase(Locale.ROOT)
        + " sits "
        + Numbers.fixed(Math.abs(w.meanShiftOctaves()), 2)
        + " octaves "
        + (w.meanShiftOctaves() < 0 ? "lower" : "higher")
        + " on the new fixture on average (± "
        + Numbers.fixed(w.meanHalfOctaves(), 2)
        + " octaves); the shift's standard deviation is "
        + Numbers.against(w.sdOctaves(), LIMIT_OCTAVES, 2)
        + " octaves, against a limit of 1/12 (0.08): "
        + w.zone().map(ResonanceSentence::wanders).orElse("it moves alike on all of them.");
  }

  private static String wanders(ResonanceWander.Range zone) {
    return "it wanders, and no band from "
        + Numbers.hertz(zone.fromHz())
        + " to "
        + Numbers.hertz(zone.toHz())
        + " is better than caution.";
  }
}
