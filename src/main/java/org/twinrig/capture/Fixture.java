package org.twinrig.capture;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.FrequencyRange;

/**
 * What headphones are put on to be measured.
 *
 * @param label how reports call it; the name is the short one that the study's files use
 * @param earSimulator the standard its ear simulator follows; empty when not stated
 * @param simulates where it is like a human ear; nothing when not stated
 * @param usable where it can be used at all, if only as a coupler; nothing when not stated
 * @param specimen which one it is, with the pinna it wears; empty when not stated
 * @param calibratorClass of the calibrator used on it; nothing when not stated for this fixture
 * @param calibratorUncertaintyDb expanded uncertainty of that calibrator's level as its certificate
 *     states it, {@code k = 2}, dB; nothing when not stated
 */
public record Fixture(
    String name,
    String label,
    String earSimulator,
    Optional<FrequencyRange> simulates,
    Optional<FrequencyRange> usable,
    String specimen,
    Optional<CalibratorClass> calibratorClass,
    OptionalDouble calibratorUncertaintyDb) {

  public Fixture {
    if (name.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("a fixture needs a name and a label");
    }
    Objects.requireNonNull(simulates, "simulates");
    Objects.requireNonNull(usable, "usable");
    Objects.requireNonNull(calibratorClass, "calibratorClass");
  }

  /** A fixture of whose calibrator no certificate is known. */
  public Fixture(
      String name,
      String label,
      String earSimulator,
      Optional<FrequencyRange> simulates,
      Optional<FrequencyRange> usable,
      String specimen,
      Optional<CalibratorClass> calibratorClass) {
    this(
        name,
        label,
        earSimulator,
        simulates,
        usable,
        specimen,
        calibratorClass,
        OptionalDouble.empty());
  }

  /** A fixture of which nothing is stated but the range it can be used in, Hz. */
  public Fixture(
      String name, String label, String earSimulator, double usableFromHz, double usableToHz) {
    this(
        name,
        label,
        earSimulator,
        Optional.empty(),
        Optional.of(new FrequencyRange(usableFromHz, usableToHz)),
        "",
        Optional.empty());
  }

  /** A fixture of which nothing is stated but what it is called. */
  public Fixture(String label) {
    this(label, label, "", Optional.empty(), Optional.empty(), "", Optional.empty());
  }
}
