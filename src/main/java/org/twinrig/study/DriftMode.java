package org.twinrig.study;

/** What becomes of the drift that the check unit shows. */
public enum DriftMode {
  /** It is charted and reported, and no capture is changed. */
  REPORT,
  /**
   * It is taken out of every capture of its session, and the error budget carries what that costs.
   */
  CORRECT
}
