package org.twinrig.study;

import org.twinrig.capture.Capture;
import org.twinrig.internal.Checks;
import org.twinrig.response.Levels;

/**
 * A capture on the study's bands, corrected for its session and pinned to the anchor.
 *
 * @param capture its response pinned to the anchor
 * @param levels its band levels relative to the anchor, dB
 * @param anchorDb the level that was subtracted to pin it, dB; 0 when there is no anchor
 */
public record AnchoredCapture(Capture capture, Levels levels, double anchorDb) {
  public AnchoredCapture {
    Checks.finite(anchorDb, "the level at the anchor in dB");
  }
}
