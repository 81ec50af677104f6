package org.twinrig.simulation;

import org.twinrig.internal.Checks;

/**
 * One cross mode of the air in front of the ear (or of the concha, or the canal entrance), as the
 * pole and zero it puts into the transfer from the front volume to the canal:
 *
 * <pre>H = (1 - x² + j·g·x/Q) / (1 - x² + j·x/Q),   x = f/f0</pre>
 *
 * <p>{@code g} is the gain at the mode's frequency: above 1 a resonance, below 1 a notch; far from
 * {@code f0} the factor is 1. A notch at the ear is where the mode meets the direct sound in
 * opposite phase.
 */
record Mode(double hz, double quality, double gainDb) {

  Mode {
    Checks.positive(hz, "a mode's frequency in Hz");
    Checks.positive(quality, "a mode's quality factor");
    Checks.finite(gainDb, "a mode's gain in dB");
  }

  Mode moved(double octaves, double gainChangeDb) {
    return new Mode(hz * Math.pow(2, octaves), quality, gainDb + gainChangeDb);
  }

  double gain() {
    return Math.pow(10, gainDb / 20);
  }

  /** The factor at a frequency; {@code gain} is {@link #gain()}, taken once per curve. */
  Complex factor(double atHz, double gain) {
    double x = atHz / hz;
    double real = 1 - x * x;
    double loss = x / quality;
    return new Complex(real, gain * loss).over(new Complex(real, loss));
  }
}
