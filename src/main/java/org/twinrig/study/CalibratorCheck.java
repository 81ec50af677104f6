package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Session;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;

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

  /** The check of a session; nothing when the class of its calibrator is not known. */
  public static Optional<CalibratorCheck> of(Study study, Session session) {
    return study
        .fixture(session)
        .flatMap(study::calibratorClass)
        .map(c -> new CalibratorCheck(c.levelLimitDb() + study.settings().microphoneDriftDb()));
  }

  /** Whether a session's readings, at its beginning and end, depart by no more than the limit. */
  public boolean holds(Session session) {
    return session.departureDb() <= limitDb + ROUNDING_DB;
  }

  /** A note for every session whose calibrator is not in order, or was not corrected as it must. */
  static List<Problem> notes(String source, Study study) {
    List<Problem> notes = new ArrayList<>();
    for (Session session : study.sessions()) {
      of(study, session)
          .filter(check -> !check.holds(session))
          .ifPresent(check -> notes.add(check.note(source, session)));
      study
          .fixture(session)
          .flatMap(study::calibratorClass)
          .filter(c -> c.followsPressure() && session.calibrator() != Calibrator.PISTONPHONE)
          .ifPresent(c -> notes.add(notCorrected(source, session, c)));
    }
    return Repeated.toldOnce(notes);
  }

  private static Problem notCorrected(String source, Session session, CalibratorClass limits) {
    return new Problem(
        Problem.Kind.NOTE,
        source,
        session.line(),
        String.format(
            "the level of a calibrator of class `%s`, that of `%s`, follows the static pressure, and"
                + " was not corrected for it",
            limits.word(), session.fixture()),
        "write `pistonphone` under `calibrator` and the pressure under `pressure_kpa`, unless"
            + " `calibrator_nominal_db` is corrected already");
  }

  private Problem note(String source, Session session) {
    return new Problem(
        Problem.Kind.NOTE,
        source,
        session.line(),
        String.format(
            "%s session `%s` departs from the calibrator's level of %s dB by %s dB, but at most %s"
                + " dB is allowed",
            session.setup().calibratorEndDb().isPresent() ? "a reading of" : "the reading of",
            session.name(),
            Numbers.fixed(session.calibratorTrueDb(), 2),
            Numbers.against(session.departureDb(), limitDb, 2),
            Numbers.fixed(limitDb, 2)),
        "check how the calibrator sat, its battery and the microphone, and read again; where the"
            + " chain had been set otherwise, declare `microphone_drift_db` in study.yaml");
  }
}
