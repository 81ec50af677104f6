package org.twinrig.study;

import java.util.Optional;

/** The keys {@code check_unit}, {@code drift} and {@code microphone_drift_db} of study.yaml. */
final class SessionRulesReader {
  private static final double MOST_DRIFT_DB = 20;

  private final YamlGroup root;

  SessionRulesReader(YamlGroup root) {
    this.root = root;
  }

  /** Rules; where a value was refused, the default stands in and the problem is on record. */
  SessionRules read() {
    Optional<String> checkUnit = root.value("check_unit").flatMap(this::checkUnit);
    Optional<DriftMode> drift =
        root.value("drift").flatMap(v -> v.choice(DriftMode.class).flatMap(d -> possible(v, d)));
    double microphoneDriftDb =
        root.value("microphone_drift_db")
            .flatMap(
                v ->
                    v.number(
                        db -> db >= 0 && db <= MOST_DRIFT_DB,
                        "write how far the chain may have moved, in dB from 0 to 20"))
            .orElse(0.0);
    // A refused check unit leaves nothing to correct by; the study is not run then anyway.
    DriftMode mode = checkUnit.isPresent() ? drift.orElse(DriftMode.REPORT) : DriftMode.REPORT;
    return new SessionRules(checkUnit, mode, microphoneDriftDb);
  }

  private Optional<String> checkUnit(YamlValue value) {
    return root.value("sessions").isPresent()
        ? value.text()
        : value.refuse("name the table of `sessions` too: the unit is compared between sessions");
  }

  private Optional<DriftMode> possible(YamlValue value, DriftMode mode) {
    return mode == DriftMode.REPORT || root.value("check_unit").isPresent()
        ? Optional.of(mode)
        : value.refuse(
            "name the `check_unit` that was captured in every session, or write `drift: report`");
  }
}
