package org.twinrig.report.html;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.study.Tolerance;

/**
 * How to read the marks.
 *
 * @param interval what a prediction interval is
 * @param entries one per mark, best first
 */
public record Legend(String interval, List<Entry> entries) {

  /**
   * One mark.
   *
   * @param swatch as the strip shows it
   * @param meaning what it allows
   */
  public record Entry(Swatch swatch, String meaning) {}

  static Legend of(Tolerance tolerance, double confidence) {
    return new Legend(
        "Every band carries a mark. It rests on the prediction interval: made from the old graph of"
            + " one unit, it is the range in which a new measurement of that unit on the new fixture"
            + " is expected to fall "
            + Numbers.fixed(100 * confidence, 0)
            + " times in a hundred. Its half-width is the distance from its middle to either end.",
        List.of(
            new Entry(
                Swatch.RELIABLE,
                "the half-width is at most "
                    + SettingSheet.limit(tolerance.reliable())
                    + ". The translated level can stand as if measured."),
            new Entry(
                Swatch.CAUTION,
                "the half-width is at most "
                    + SettingSheet.limit(tolerance.caution())
                    + ", or something is known that may spoil the band. Use the level with its"
                    + " interval shown."),
            new Entry(
                Swatch.UNRELIABLE,
                "the interval is wider than that, or too few units were measured. Do not use the"
                    + " level in place of a measurement."),
            new Entry(Swatch.GAP, "nothing was measured here.")));
  }
}
