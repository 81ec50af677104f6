package org.twinrig.study;

import org.twinrig.band.FrequencyRange;

/**
 * A range of frequencies the lab already knows to be doubtful on the fixture of that name. It may
 * only lower a mark, never raise one.
 */
public record DeclaredZone(String name, String fixture, double fromHz, double toHz) {

  public DeclaredZone {
    if (name.isBlank() || fixture.isBlank()) {
      throw new IllegalArgumentException("a zone needs a name and a fixture");
    }
    new FrequencyRange(fromHz, toHz);
  }
}
