package org.twinrig.study;

import org.twinrig.capture.Capture;
import org.twinrig.response.Levels;

/**
 * A capture on the study's bands, corrected for its session and pinned to the anchor.
 *
 * @param capture the capture after its session's corrections, its response pinned to the anchor
 * @param levels its band levels relative to the anchor, dB
 */
public record AnchoredCapture(Capture capture, Levels levels) {}
