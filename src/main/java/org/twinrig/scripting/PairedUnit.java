package org.twinrig.scripting;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * A unit on both fixtures: means over its accepted seatings, relative to the anchor.
 *
 * @param unit its name
 * @param seatings on the old fixture, the fewest of any band with a level
 * @param from mean levels on the old fixture, dB per band
 * @param to mean levels on the new fixture, dB per band
 */
public record PairedUnit(String unit, String kind, int seatings, Levels from, Levels to) {

  /** The unit's own difference: new minus old, dB per band, missing where either is. */
  public Levels difference() {
    return to.minus(from);
  }

  static List<PairedUnit> of(PairedUnits paired) {
    List<PairedUnit> units = new ArrayList<>();
    for (int i = 0; i < paired.units().size(); i++) {
      int seatings =
          paired.from().seatings().get(i).stream()
              .filter(n -> n > 0)
              .mapToInt(n -> n)
              .min()
              .orElse(1);
      units.add(
          new PairedUnit(
              paired.units().get(i),
              paired.kind(),
              seatings,
              paired.from().means().get(i),
              paired.to().means().get(i)));
    }
    return units;
  }
}
