package org.twinrig.study;

import org.twinrig.band.BandGrid;

/** The bands a study asks for: how many per octave, and the range in Hz they cover. */
public record Bands(int perOctave, double fromHz, double toHz) {

  public Bands {
    BandGrid.covering(fromHz, toHz, perOctave); // refuses what holds no band
  }

  /** The bands that {@link BandGrid#covering} finds there. */
  public BandGrid grid() {
    return BandGrid.covering(fromHz, toHz, perOctave);
  }
}
