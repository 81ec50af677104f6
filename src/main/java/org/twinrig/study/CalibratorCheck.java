package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Session;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/**
 * Whether a calibrator was read where its class says that it must be.
 *
 * <p>The reading may depart from the level the calibrator gave by the limit of its class (IEC
 * 60942:2017, Table 2) plus what the lab declared that its chain may have moved. A reading at the
 * limit conforms. The correction is made either way: the check says when it is so large that
 * something else than a slow change of the chain is the more likely reason. Adding the two limits
 * is our choice: common practice, no source.
 *
 * @param limitDb the greatest departure that is in order, dB
 */
public record CalibratorCheck(double limitDb) {
  /** Levels are written to 0.01 dB; their differences in binary are not. */
  private static final double ROUNDING_DB = 1e-9;

  /** The check a study asks for; nothing when the class of the calibrators is not known. */
  public static Optional<CalibratorCheck> of(Settings settings) {
    return settings
        .calibratorClass()
        .map(c -> new CalibratorCheck(c.levelLimitDb() + settings.microphoneDriftDb()));
  }

  /** Whether a session's reading departs by no more than the limit. */
  public boolean holds(Session session) {
    return Math.abs(session.correctionDb()) <= limitDb + ROUNDING_DB;
  }

  /** A note for every session whose reading is not in order. */
  List<Problem> notes(String source, List<Session> sessions) {
    return sessions.stream().filter(s -> !holds(s)).map(s -> note(source, s)).toList();
  }

  private Problem note(String source, Session session) {
    return new Problem(
        Problem.Kind.NOTE,
        source,
        session.line(),
        String.format(
            "the reading of session `%s` departs from the calibrator's level of %s dB by %s dB, but"
                + " at most %s dB is allowed",
            session.name(),
            Numbers.fixed(session.calibratorTrueDb(), 2),
            Numbers.against(Math.abs(session.correctionDb()), limitDb, 2),
            Numbers.fixed(limitDb, 2)),
        "check how the calibrator sat, its battery and the microphone, and read again; where the"
            + " chain had been set otherwise, declare `microphone_drift_db` in study.yaml");
  }
}
