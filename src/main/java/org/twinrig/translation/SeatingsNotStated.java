package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;

/**
 * Graphs of which nobody knows how many seatings they average. One is assumed, which widens their
 * intervals; so that nothing is held up.
 */
final class SeatingsNotStated {
  static final String DOUBT = "seatings not stated";

  private SeatingsNotStated() {}

  static Optional<Doubt> of(List<CatalogueEntry> entries) {
    long unsaid = entries.stream().filter(e -> e.averaged().seatings().isEmpty()).count();
    return unsaid == 0
        ? Optional.empty()
        : Optional.of(
            Doubt.open(
                Doubt.Subject.CATALOGUE,
                "",
                "",
                DOUBT,
                new Doubt.Found(Numbers.count(unsaid, "graph", "graphs"), "0 graphs"),
                "%s: each is taken to be of one seating."
                    .formatted(
                        Numbers.count(
                            unsaid,
                            "graph leaves `seatings` empty",
                            "graphs leave `seatings` empty")),
                "Intervals are wider than they need be where more were averaged. Write how many"
                    + " where it is known; nothing is held up."));
  }
}
