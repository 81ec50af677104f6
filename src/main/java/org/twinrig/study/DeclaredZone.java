package org.twinrig.study;

/**
 * A range the lab already knows to be doubtful on one fixture. It may only lower a mark, never
 * raise one.
 *
 * @param name what the lab calls it
 * @param fixture the name of the fixture it belongs to
 * @param fromHz lower end in Hz, above 0
 * @param toHz upper end in Hz, above {@code fromHz}
 */
public record DeclaredZone(String name, String fixture, double fromHz, double toHz) {

  public DeclaredZone {
    if (name.isBlank() || fixture.isBlank()) {
      throw new IllegalArgumentException("a zone needs a name and a fixture");
    }
    new FrequencyRange(fromHz, toHz);
  }
}
