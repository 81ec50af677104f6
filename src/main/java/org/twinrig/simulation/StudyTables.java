package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;

/** The tables of a simulated study, one line of text per row. No cell needs quotes. */
final class StudyTables {
  private StudyTables() {}

  static List<String> units(SimulatedStudy study) {
    List<String> lines = new ArrayList<>(List.of("unit,kind,role,note"));
    for (Unit unit : study.units()) {
      String role = unit.role().name().toLowerCase(Locale.ROOT);
      lines.add(row(unit.name(), unit.kind(), role, unit.note()));
    }
    return lines;
  }

  static List<String> captures(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add("unit,fixture,side,seating,file,session,exclude,note");
    for (Capture capture : study.captures()) {
      CaptureEntry e = capture.entry();
      lines.add(
          row(
              e.unit(),
              e.fixture(),
              e.side().name(),
              String.valueOf(e.seating()),
              e.file(),
              e.session(),
              e.exclude(),
              e.note()));
    }
    return lines;
  }

  static List<String> sessions(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "session,date,fixture,calibrator_nominal_db,calibrator_read_db,pressure_kpa,"
            + "temperature_c,operator,note");
    for (Session s : study.sessions()) {
      lines.add(
          row(
              s.name(),
              s.date(),
              s.fixture(),
              Numbers.fixed(s.calibratorNominalDb(), 1),
              Numbers.fixed(s.calibratorReadDb(), 2),
              Numbers.fixed(s.pressureKpa().orElseThrow(), 1),
              Numbers.fixed(s.temperatureC().orElseThrow(), 1),
              s.operator(),
              s.note()));
    }
    return lines;
  }

  static List<String> catalogue(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add("graph,unit,kind,file,seatings,form,reference,smoothing");
    for (SimulatedGraph graph : study.catalogue()) {
      boolean compensated = graph.form() == SimulatedGraph.Form.COMPENSATED;
      lines.add(
          row(
              graph.graph(),
              graph.unit(),
              graph.listedKind(),
              graphFile(graph),
              String.valueOf(graph.seatings()),
              graph.form().name().toLowerCase(Locale.ROOT),
              compensated ? StudyWriter.REFERENCE_FILE : "",
              "none"));
    }
    return lines;
  }

  static String graphFile(SimulatedGraph graph) {
    return "catalogue/" + graph.graph().toLowerCase(Locale.ROOT) + ".csv";
  }

  static List<String> troubles(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add("# What was planted, so that screening can be held against it.");
    lines.add("unit,fixture,side,seating,trouble,excluded_by_lab");
    for (SimulatedCapture made : study.simulated()) {
      CaptureEntry e = made.capture().entry();
      made.planted()
          .ifPresent(
              trouble ->
                  lines.add(
                      row(
                          e.unit(),
                          e.fixture(),
                          e.side().name(),
                          String.valueOf(e.seating()),
                          trouble.text(),
                          e.excludedByLab() ? "yes" : "no")));
    }
    return lines;
  }

  static String row(String... cells) {
    return Arrays.stream(cells)
        .map(cell -> cell.indexOf(',') < 0 ? cell : '"' + cell + '"')
        .collect(Collectors.joining(","));
  }
}
