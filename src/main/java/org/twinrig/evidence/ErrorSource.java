package org.twinrig.evidence;

/** Where the error of one unit's translated level comes from, in the order of the budget. */
public enum ErrorSource {
  /** Scatter between units, {@code τ²}. */
  UNITS("between units"),
  /** Scatter between seatings on the old fixture, {@code s2_A/ñ_A}. */
  SEATING_FROM("seating on the old fixture"),
  /** Scatter between seatings on the new fixture, {@code s2_B/ñ_B}. */
  SEATING_TO("seating on the new fixture"),
  /** Uncertainty of the mean transfer, {@code SE²}. */
  FIT("fit of the mean"),
  CALIBRATOR_FROM("calibrator of the old fixture"),
  CALIBRATOR_TO("calibrator of the new fixture"),
  /** What correcting sessions for drift brings in; there only where they were corrected. */
  DRIFT("correction of drift");

  private final String word;

  ErrorSource(String word) {
    this.word = word;
  }

  /** The source as reports name it: for example {@code between units}. */
  public String word() {
    return word;
  }
}
