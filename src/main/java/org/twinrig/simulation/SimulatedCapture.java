package org.twinrig.simulation;

import java.util.Optional;
import org.twinrig.capture.Capture;

/**
 * A capture as the lab has it and what is known of it because it was made up: phase at the
 * microphone in degrees, one per point, what is wrong with it, if anything, and the format of its
 * file.
 */
@SuppressWarnings("ArrayRecordComponent") // written to a file, never compared
record SimulatedCapture(
    Capture capture, double[] phaseDeg, Optional<Trouble> planted, CaptureFormat format) {

  enum Trouble {
    /** The cushion or tip did not seal. */
    LOST_SEAL,
    /** The microphone had drifted. */
    DRIFTING_SESSION,
    /** The unit had other pads than on the other fixture. */
    OTHER_PADS
  }
}
