package org.twinrig.capture;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * A run of captures made without switching the chain off, and what the calibrator read.
 *
 * @param date as the lab wrote it; {@link #time()} understands it or not
 * @param calibratorNominalDb the calibrator's stated level, dB SPL; of a pistonphone, at 101.325
 *     kPa
 * @param calibratorReadDb the level that was read, dB SPL
 * @param pressureKpa static pressure in kPa, if noted; with a pistonphone it must be
 * @param temperatureC temperature in °C, if noted
 * @param operator who measured; may be empty
 * @param confirmed what the lab answers to doubts about the session; empty when nothing
 * @param line the line of sessions.csv, from 1
 * @param setup what else was noted
 */
public record Session(
    String name,
    String date,
    String fixture,
    double calibratorNominalDb,
    double calibratorReadDb,
    Calibrator calibrator,
    OptionalDouble pressureKpa,
    OptionalDouble temperatureC,
    String operator,
    String note,
    String confirmed,
    int line,
    Setup setup) {

  /** A session of which nothing further is noted. */
  public Session(
      String name,
      String date,
      String fixture,
      double calibratorNominalDb,
      double calibratorReadDb,
      Calibrator calibrator,
      OptionalDouble pressureKpa,
      OptionalDouble temperatureC,
      String operator,
      String note,
      int line) {
    this(
        name,
        date,
        fixture,
        calibratorNominalDb,
        calibratorReadDb,
        calibrator,
        pressureKpa,
        temperatureC,
        operator,
        note,
        "",
        line,
        Setup.NOT_NOTED);
  }

  public Session {
    Checks.finite(calibratorNominalDb, "calibrator_nominal_db");
    Checks.finite(calibratorReadDb, "calibrator_read_db");
    if (calibrator == Calibrator.PISTONPHONE && pressureKpa.isEmpty()) {
      throw new IllegalArgumentException("a pistonphone's level is not known without the pressure");
    }
  }

  /**
   * When the session was held: the start of the day, or the time where one is written ({@code
   * 2026-03-02}, {@code 2026-03-02T14:30}, {@code 2026-03-02 14:30}; ISO 8601); nothing when the
   * date is written otherwise.
   */
  public Optional<LocalDateTime> time() {
    String text = date.strip().replace(' ', 'T');
    try {
      return Optional.of(
          text.contains("T") ? LocalDateTime.parse(text) : LocalDate.parse(text).atStartOfDay());
    } catch (DateTimeParseException e) {
      // Not a fault: the date is shown as it was written, and the caller says what follows.
      return Optional.empty();
    }
  }

  /**
   * Sessions of one fixture by time, those of the same time in the order given; all in the order
   * given, that of the table, when any time is not known.
   */
  public static List<Session> inOrder(List<Session> sessions, String fixture) {
    List<Session> own = sessions.stream().filter(s -> s.fixture.equals(fixture)).toList();
    return own.stream().allMatch(s -> s.time().isPresent())
        ? own.stream().sorted(Comparator.comparing(s -> s.time().orElseThrow())).toList()
        : own;
  }

  /**
   * The level the calibrator gave at the session's static pressure, dB SPL: the stated level, with
   * what the load volume adds, of a pistonphone {@code + 20·lg(p/101.325 kPa)}.
   */
  public double calibratorTrueDb() {
    return calibratorNominalDb
        + setup.calibratorAdapterDb().orElse(0)
        + (calibrator == Calibrator.PISTONPHONE
            ? Calibrator.pressureTermDb(pressureKpa.orElseThrow())
            : 0);
  }

  /**
   * What to add to a capture of this session so that the calibrator reads true: the level it gave
   * minus the level that was read, dB; the mean of two readings where it was read at the end too.
   */
  public double correctionDb() {
    return calibratorTrueDb() - (calibratorReadDb + calibratorEndDb()) / 2;
  }

  /** How far the reading that departs most is from the level the calibrator gave: dB, 0 or more. */
  public double departureDb() {
    return Math.max(
        Math.abs(calibratorTrueDb() - calibratorReadDb),
        Math.abs(calibratorTrueDb() - calibratorEndDb()));
  }

  /** How far the reading moved within the session: dB; 0 where it was taken once. */
  public double readingDriftDb() {
    return calibratorEndDb() - calibratorReadDb;
  }

  private double calibratorEndDb() {
    return setup.calibratorEndDb().orElse(calibratorReadDb);
  }
}
