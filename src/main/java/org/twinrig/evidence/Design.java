package org.twinrig.evidence;

/**
 * How much of a kind is captured: every unit on both fixtures, with so many seatings on each.
 *
 * <p>All three are 1 or more.
 */
public record Design(int units, int seatingsFrom, int seatingsTo) {
  public Design {
    if (units < 1 || seatingsFrom < 1 || seatingsTo < 1) {
      throw new IllegalArgumentException(
          "a design needs 1 or more units and seatings, but has %s, %s, %s"
              .formatted(units, seatingsFrom, seatingsTo));
    }
  }

  /** What it costs: seatings in all, {@code units·(seatingsFrom + seatingsTo)}. */
  public int seatings() {
    return units * (seatingsFrom + seatingsTo);
  }
}
