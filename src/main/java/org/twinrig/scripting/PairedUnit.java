package org.twinrig.scripting;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * A unit on both fixtures: mean levels over its accepted seatings on the old and the new one, dB
 * per band relative to the anchor.
 *
 * @param seatings on the old fixture, the fewest of any band with a level
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
