package org.twinrig.study;

import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Levels;

/**
 * A capture on the study's bands, corrected for its session and pinned to the anchor: its response
 * and its band levels relative to that, dB, and the level that was subtracted, dB; 0 when there is
 * no anchor.
 */
public record AnchoredCapture(Capture capture, Levels levels, double anchorDb) {
  public CaptureEntry entry() {
    return capture.entry();
  }
}
