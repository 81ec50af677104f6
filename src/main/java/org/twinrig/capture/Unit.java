package org.twinrig.capture;

/**
 * One specimen of a headphone.
 *
 * @param kind what sort of headphone it is, compared exactly
 * @param pads the ear pads or tips it was measured with; empty when not stated
 * @param line the line of units.csv it stands in, from 1
 */
public record Unit(String name, String kind, Role role, String pads, String note, int line) {

  /** What a unit is used for. */
  public enum Role {
    /** Enters the estimates. */
    FIT,
    /** Never enters a fit; its errors are reported apart. */
    HOLDOUT,
    /** Never enters a fit; it is captured in every session to show drift. */
    CHECK
  }

  public Unit {
    if (name.isBlank() || kind.isBlank()) {
      throw new IllegalArgumentException("a unit needs a name and a kind");
    }
  }
}
