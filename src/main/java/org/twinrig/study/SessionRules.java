package org.twinrig.study;

import java.util.Objects;
import java.util.Optional;
import org.twinrig.internal.Checks;

/**
 * How sessions are judged and corrected.
 *
 * @param checkUnit the unit that is captured in every session, if the lab has one
 * @param drift what becomes of the drift it shows
 * @param microphoneDriftDb how far the lab expects its chain to have moved since its sensitivity
 *     was set, dB, 0 or more; added to the calibrator's own limit when a reading is judged
 */
public record SessionRules(Optional<String> checkUnit, DriftMode drift, double microphoneDriftDb) {

  public SessionRules {
    Objects.requireNonNull(checkUnit, "checkUnit");
    Objects.requireNonNull(drift, "drift");
    Checks.notNegative(microphoneDriftDb, "microphone_drift_db");
    if (drift == DriftMode.CORRECT && checkUnit.isEmpty()) {
      throw new IllegalArgumentException("drift can be corrected only by a check unit");
    }
  }
}
