package org.twinrig.capture;

import java.util.Objects;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * A run of captures made without switching the chain off, and what the calibrator read.
 *
 * @param name the session's name
 * @param date as the lab wrote it
 * @param fixture the fixture's name
 * @param calibratorNominalDb the calibrator's stated level, dB SPL
 * @param calibratorReadDb the level that was read, dB SPL
 * @param pressureKpa static pressure in kPa, if noted
 * @param temperatureC temperature in °C, if noted
 * @param operator who measured; may be empty
 * @param note the lab's remark; may be empty
 * @param line the line of sessions.csv, from 1
 */
public record Session(
    String name,
    String date,
    String fixture,
    double calibratorNominalDb,
    double calibratorReadDb,
    OptionalDouble pressureKpa,
    OptionalDouble temperatureC,
    String operator,
    String note,
    int line) {

  /** Checks the numbers. */
  public Session {
    Checks.finite(calibratorNominalDb, "calibrator_nominal_db");
    Checks.finite(calibratorReadDb, "calibrator_read_db");
    Objects.requireNonNull(pressureKpa, "pressureKpa");
    Objects.requireNonNull(temperatureC, "temperatureC");
  }

  /**
   * What to add to a capture of this session so that the calibrator reads true.
   *
   * @return nominal minus read, dB
   */
  public double correctionDb() {
    return calibratorNominalDb - calibratorReadDb;
  }
}
