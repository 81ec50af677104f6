package org.twinrig.study;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Session;
import org.twinrig.capture.Setup;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;

/** The table of sessions: on fixtures, of a chain that may have moved by so much. */
record SessionsTable(Roster<String> fixtures, double microphoneDriftDb) {
  static final LabTable.Columns COLUMNS =
      new LabTable.Columns(
          "sessions",
          List.of("session", "date", "fixture", "calibrator_nominal_db", "calibrator_read_db"),
          List.of(
              "calibrator",
              "calibrator_adapter_db",
              "calibrator_end_db",
              "pressure_kpa",
              "temperature_c",
              "humidity_pct",
              "ear_simulator",
              "microphone",
              "pinna",
              "drive_v",
              "source_ohm",
              "level_db",
              "operator",
              "exclude",
              "note",
              "confirmed"));

  /**
   * A reading farther off is taken for a slip, such as a lost digit or a calibrator on its other
   * level (94 dB and 114 dB are usual). Our choice: common practice, no source.
   */
  private static final double MOST_OFF_DB = 10;

  /** A reading that moves by more within a session is told: common practice, no source. */
  private static final double MOST_MOVED_DB = 0.3;

  /**
   * How else days are written. With dots the day stands before the month; with slashes or hyphens
   * either may, so that a day up to the 12th can be read in two ways.
   */
  private static final List<DateTimeFormatter> OTHER_FORMS =
      Stream.of("u-M-d", "u/M/d", "u.M.d", "d.M.u", "d-M-u", "d/M/u", "M-d-u", "M/d/u")
          .map(form -> DateTimeFormatter.ofPattern(form.replace("u", "uuuu"), Locale.ROOT))
          .map(form -> form.withResolverStyle(ResolverStyle.STRICT))
          .toList();

  Findings<List<Session>> read(LabTable table) {
    Map<String, First> firsts = new HashMap<>();
    return table.read(row -> session(row, firsts));
  }

  /** The row that a session stands in first. */
  private record First(int line, String fixture, Setup setup) {

    /** Refuses a later row of the same session: with what it says otherwise, if anything. */
    void refuse(LabRow row, String name, First later) {
      String again = "session `" + name + "` stands in line " + line + " already";
      Optional<String> serial = setup.contradiction(later.setup);
      if (!later.fixture.equals(fixture)) {
        row.refuse(
            again + ", on `" + fixture + "`",
            "a session is held on one fixture: give the one on `"
                + later.fixture
                + "` a name of its own");
      } else if (serial.isPresent()) {
        row.refuse(
            again + ", with another " + serial.get(),
            "a session is held with one: give what was captured after the change a session of its"
                + " own, or correct the serial");
      } else {
        row.refuse(again, "keep one row for each session");
      }
    }
  }

  private Optional<Session> session(LabRow row, Map<String, First> firsts) {
    String name = row.text("session");
    String date = row.text("date");
    String fixture = row.text("fixture");
    fixtures.find(row, "fixture");
    double nominalDb = row.decimal("calibrator_nominal_db");
    double readDb = row.decimal("calibrator_read_db");
    // Weather at any altitude people work at; a slip of hPa for kPa falls outside.
    OptionalDouble pressureKpa = row.decimalIfAny("pressure_kpa", 50, 120);
    OptionalDouble temperatureC = row.decimalIfAny("temperature_c", -30, 60);
    Calibrator calibrator = calibrator(row);
    Setup setup = setup(row);
    String confirmed = row.confirmed();
    row.reason("exclude", "leaves the session out; empty the cell to keep it");
    First here = new First(row.line(), fixture, setup);
    First earlier = firsts.putIfAbsent(name, here);
    if (earlier != null && row.has("session")) {
      earlier.refuse(row, name, here);
    }
    return row.ifSound(
            () ->
                new Session(
                    name,
                    date,
                    fixture,
                    nominalDb,
                    readDb,
                    calibrator,
                    pressureKpa,
                    temperatureC,
                    row.cell("operator"),
                    row.cell("note"),
                    confirmed,
                    row.line(),
                    setup))
        .filter(session -> plausible(row, session))
        .map(session -> dated(row, session))
        .map(session -> steady(row, session));
  }

  private static Setup setup(LabRow row) {
    return new Setup(
        row.cell("ear_simulator").strip(),
        row.cell("microphone").strip(),
        row.cell("pinna").strip(),
        row.decimalIfAny("humidity_pct", 0, 100),
        row.decimalIfAny("drive_v", 0.001, 100),
        row.decimalIfAny("source_ohm", 0, 10_000),
        row.decimalIfAny("level_db", 0, 150),
        // A pistonphone in a small cavity: tenths of a dB to some dB.
        row.decimalIfAny("calibrator_adapter_db", -20, 20),
        row.decimalIfAny("calibrator_end_db", 0, 200),
        row.own());
  }

  private boolean plausible(LabRow row, Session session) {
    OptionalDouble endDb = session.setup().calibratorEndDb();
    return plausible(row, session, "calibrator_read_db", session.calibratorReadDb())
        && (endDb.isEmpty() || plausible(row, session, "calibrator_end_db", endDb.getAsDouble()));
  }

  private boolean plausible(LabRow row, Session session, String column, double readDb) {
    double mostOffDb = Math.max(MOST_OFF_DB, microphoneDriftDb);
    double offDb = Math.abs(session.calibratorTrueDb() - readDb);
    boolean plausible = offDb <= mostOffDb;
    if (!plausible) {
      row.refuse(
          String.format(
              "`%s` is `%s`, %s dB from the %s dB that the calibrator gave",
              column,
              row.cell(column),
              Numbers.against(offDb, mostOffDb, 1),
              Numbers.fixed(session.calibratorTrueDb(), 1)),
          "more than "
              + Numbers.fixed(mostOffDb, 0)
              + " dB is taken for a slip: correct the reading or the nominal level; if the chain was"
              + " really that far off, declare `microphone_drift_db` in study.yaml");
    }
    return plausible;
  }

  private static Session dated(LabRow row, Session session) {
    if (session.time().isEmpty()) {
      row.note(
          String.format(
              "`date` is `%s`, which is no day written as year-month-day: the session is used, and the"
                  + " drift charts of `%s` follow the order of the rows; write %s",
              session.date(),
              session.fixture(),
              meant(session.date()).orElse("the day like 2026-03-02")));
    }
    return session;
  }

  private static Session steady(LabRow row, Session session) {
    if (Math.abs(session.readingDriftDb()) > MOST_MOVED_DB) {
      row.note(
          String.format(
              "the calibrator was read %s dB apart at the beginning and at the end of session `%s`:"
                  + " captures are corrected by the mean of both readings, and their levels are off"
                  + " by up to half of it",
              Numbers.against(Math.abs(session.readingDriftDb()), MOST_MOVED_DB, 2),
              session.name()));
    }
    return session;
  }

  /** The day after ISO 8601, where only one day can be meant by what is written. */
  private static Optional<String> meant(String date) {
    List<String> days = OTHER_FORMS.stream().flatMap(form -> day(date, form)).toList();
    return days.size() == 1 ? Optional.of(days.get(0)) : Optional.empty();
  }

  private static Stream<String> day(String date, DateTimeFormatter form) {
    try {
      return Stream.of(LocalDate.parse(date.strip(), form).toString());
    } catch (DateTimeParseException e) {
      return Stream.empty(); // not written in this form, or no such day in it
    }
  }

  private static Calibrator calibrator(LabRow row) {
    String word =
        row.word(
            "calibrator",
            Stream.of(Calibrator.values()).map(Calibrator::word).toList(),
            Calibrator.LEVEL_CONTROLLED.word());
    if (!word.equals(Calibrator.PISTONPHONE.word())) {
      return Calibrator.LEVEL_CONTROLLED;
    }
    if (!row.has("pressure_kpa")) {
      row.refuse(
          "the level of a pistonphone depends on the static pressure, and `pressure_kpa` is empty",
          "write the pressure at the place in kPa (not reduced to sea level), or leave `calibrator`"
              + " empty where `calibrator_nominal_db` is corrected for it already");
    }
    return Calibrator.PISTONPHONE;
  }
}
