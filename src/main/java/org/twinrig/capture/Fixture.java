package org.twinrig.capture;

/**
 * What headphones are put on to be measured.
 *
 * @param label how reports call it; the name is the short one that the study's files use
 * @param earSimulator the standard its ear simulator follows; empty when not stated
 * @param specifiedFromHz lower end of the range its ear simulator is specified for; both in Hz
 */
public record Fixture(
    String name, String label, String earSimulator, double specifiedFromHz, double specifiedToHz) {

  public Fixture {
    if (name.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("a fixture needs a name and a label");
    }
    if (!(0 < specifiedFromHz
        && specifiedFromHz < specifiedToHz
        && Double.isFinite(specifiedToHz))) {
      throw new IllegalArgumentException("a specified range must satisfy 0 < from < to");
    }
  }
}
