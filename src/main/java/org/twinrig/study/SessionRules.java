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

  @SuppressWarnings("OptionalMapToOptional") // what is read may be that there is none
  static Optional<Optional<String>> checkUnit(YamlValue value, Setting.Context so) {
    Optional<String> name =
        so.root().value("sessions").isPresent()
            ? value.text()
            : value.refuse(
                "name the table of `sessions` too: the unit is compared between sessions");
    return Setting.given(name);
  }

  static Optional<DriftMode> drift(YamlValue value, Setting.Context so) {
    Optional<DriftMode> mode = value.choice(DriftMode.class);
    if (mode.isEmpty() || mode.get() == DriftMode.REPORT) {
      return mode;
    }
    if (so.root().value("check_unit").isEmpty()) {
      return value.refuse(
          "name the `check_unit` that was captured in every session, or write `drift: report`");
    }
    // A check unit that was refused leaves nothing to correct by; the study is not run then anyway.
    return so.before().get(Setting.CHECK_UNIT).isPresent() ? mode : Optional.empty();
  }
}
