package org.twinrig.study;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Session;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.problem.Findings;

/** The table of sessions. */
final class SessionsTable {
  static final LabTable.Columns COLUMNS =
      new LabTable.Columns(
          List.of("session", "date", "fixture", "calibrator_nominal_db", "calibrator_read_db"),
          List.of("calibrator", "pressure_kpa", "temperature_c", "operator", "note"));

  private final Roster<String> fixtures;
  private final Map<String, Integer> lines = new HashMap<>();

  private SessionsTable(Roster<String> fixtures) {
    this.fixtures = fixtures;
  }

  static Findings<List<Session>> read(LabTable table, Roster<String> fixtures) {
    return table.read(new SessionsTable(fixtures)::session);
  }

  private Optional<Session> session(LabRow row) {
    String name = row.text("session");
    String date = row.text("date");
    String fixture = row.text("fixture");
    if (row.has("fixture")) {
      fixtures.find(row, "fixture");
    }
    double nominalDb = row.decimal("calibrator_nominal_db");
    double readDb = row.decimal("calibrator_read_db");
    // Weather at any altitude people work at; a slip of hPa for kPa falls outside.
    OptionalDouble pressureKpa = row.decimalIfAny("pressure_kpa", 50, 120);
    OptionalDouble temperatureC = row.decimalIfAny("temperature_c", -30, 60);
    Calibrator calibrator = calibrator(row);
    refuseRepeated(row, name);
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
                row.line()));
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

  private void refuseRepeated(LabRow row, String name) {
    Integer earlier = lines.putIfAbsent(name, row.line());
    if (earlier != null && row.has("session")) {
      row.refuse(
          "session `" + name + "` stands in line " + earlier + " already",
          "keep one row for each session");
    }
  }
}
