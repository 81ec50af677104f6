package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.ReferenceTable;
import org.twinrig.SessionStudy;

/** A study with a check unit, through the program's own door. */
class SessionsEndToEndTest {
  @TempDir private Path folder;

  private Path study(String name, String yaml, int threads) throws IOException {
    Path study = SessionStudy.write(folder.resolve(name), 10, "check_unit: Oak 1\n" + yaml);
    Path results = study.resolve("results");
    StringWriter err = new StringWriter();
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            "study",
            study.toString(),
            "--threads",
            "" + threads);
    assertEquals(0, status, err.toString());
    return results;
  }

  private static List<String[]> rows(Path file) throws IOException {
    return Files.readAllLines(file).stream().map(l -> l.split(",", -1)).toList();
  }

  @Test
  void chartsAreWrittenAndTheSameOnAnyNumberOfThreads() throws IOException {
    Path one = study("one", "calibrator_class: 1\ndrift: correct", 1);
    Path two = study("two", "calibrator_class: 1\ndrift: correct", 2);
    try (Stream<Path> files = Files.walk(one)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = one.relativize(file).toString();
        if (Ran.repeats(name)) {
          assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(two.resolve(name)), name);
        }
        if (name.endsWith(".csv") || name.endsWith(".svg")) {
          assertFalse(Files.readString(file).contains("NaN"), name);
        }
      }
    }
    for (String figure : List.of("drift-plate", "drift-head", "repeatability-open_over-ear")) {
      assertTrue(Files.exists(one.resolve("figures/" + figure + ".svg")), figure);
    }
    List<String[]> drift = rows(one.resolve("drift.csv"));
    assertEquals(1 + 2 * 11 * 10, drift.size());
    List<String> levels =
        drift.stream()
            .filter(r -> r[2].equals("level") && r[13].equals("yes"))
            .map(r -> r[4])
            .toList();
    // The gain stays in the moving average for some sessions.
    assertEquals("plate-04", levels.get(0));
    assertTrue(levels.stream().noneMatch(s -> s.startsWith("head")), levels.toString());
  }

  @Test
  void correctedDriftBringsTheTransferNearerAndIsBudgeted() throws IOException {
    Path reported = study("reported", "drift: report", 2);
    Path corrected = study("corrected", "drift: correct", 2);
    assertTrue(top(corrected) < 0.8 * top(reported), top(corrected) + " " + top(reported));
    int column = List.of(rows(reported.resolve("error-budget.csv")).get(0)).indexOf("drift_db");
    assertTrue(
        rows(reported.resolve("error-budget.csv")).stream()
            .skip(1)
            .allMatch(r -> r[column].isEmpty() && r[column + 5].isEmpty()));
    for (String[] row : rows(corrected.resolve("error-budget.csv")).subList(1, 28)) {
      double drift = Double.parseDouble(row[column]);
      assertTrue(drift > 0 && drift < 0.1, row[1] + ": " + drift);
      double squares = 0;
      for (int source = 2; source <= column; source++) {
        squares += Math.pow(Double.parseDouble(row[source]), 2);
      }
      assertEquals(Math.sqrt(squares), Double.parseDouble(row[column + 1]), 2e-6, row[1]);
      assertTrue(List.of("", "yes").contains(row[row.length - 1]), "Monte Carlo at " + row[1]);
    }
    String page = Files.readString(corrected.resolve("report.html"));
    assertTrue(
        page.contains(
            "<li>Head with soft cheeks: head-07 (1.27 dB) is out of control by octave at 8 kHz, range 11.2"
                + " kHz to 17.8 kHz; farthest out is range 11.2 kHz to 17.8 kHz; at most 0.55 dB from"
                + " the middle is allowed.</li>"));
    assertTrue(page.contains("Oak 1; it has no part in"));
    assertTrue(page.contains("sessions are corrected for it"));
    assertEquals(1 + 2 * 10 * 10, rows(corrected.resolve("drift-correction.csv")).size());
    assertFalse(Files.exists(reported.resolve("drift-correction.csv")));
    assertTrue(page.contains("The lab asked for correction"));
    assertTrue(page.contains("Drift (%)"));
    String plain = Files.readString(reported.resolve("report.html"));
    assertFalse(plain.contains("Drift (%)"));
    assertTrue(plain.contains("No capture was changed"));
  }

  /** Faults of sessions.csv cost what they touch; the study runs, and says all of it. */
  @Test
  void aStudyWithSpoiledSessionsGoesOn() throws IOException {
    Path study = SessionStudy.write(folder.resolve("spoiled"), 9, "check_unit: Oak 1");
    Path table = study.resolve("sessions.csv");
    Files.write(
        table,
        Files.readAllLines(table).stream()
            .filter(l -> !l.startsWith("head-05"))
            .map(l -> l.startsWith("plate-02") ? l.replace("93.9", "9.4") : l)
            .map(l -> l.startsWith("head-03") ? l.replace("2026-03-13", "13.3.26") : l)
            .toList());
    StringWriter err = new StringWriter();
    assertEquals(
        0,
        Main.run(
            new PrintWriter(new StringWriter()), new PrintWriter(err), "study", study.toString()),
        err.toString());
    for (String told :
        List.of(
            "sessions.csv:3: `calibrator_read_db` is `9.4`, 84.6 dB from the 94.0 dB that the"
                + " calibrator gave; more than 10 dB is taken for a slip: correct the reading or the"
                + " nominal level; if the chain was really that far off, declare"
                + " `microphone_drift_db` in study.yaml",
            "session `plate-02` was left out of sessions.csv (in ",
            "; mend its row there first",
            "there is no session `head-05` in sessions.csv (in ")) {
      assertTrue(err.toString().contains(told), err.toString());
    }
    String page = Files.readString(study.resolve("results/report.html"));
    assertTrue(
        page.contains(
            "sessions.csv:13: `date` is `13.3.26`, which is no day written as year-month-day:"
                + " the session is used, and the drift charts of `head` follow the order of the rows;"
                + " write the day like 2026-03-02"));
    assertFalse(page.contains("NaN"));
  }

  @Test
  void aStudyWithoutACheckUnitSaysSo() throws IOException {
    Path study = SessionStudy.write(folder.resolve("none"), 9, "calibrator_class: 1");
    assertEquals(
        0,
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(new StringWriter()),
            "study",
            study.toString()));
    String page = Files.readString(study.resolve("results/report.html"));
    assertTrue(
        page.contains(
            "<p>No check unit is named: whether the chain drifted between sessions, beyond what the"
                + " calibrator shows at its one frequency, is not known, and nothing is charted or"
                + " corrected for it. To know, capture one unit in every session and name it as"
                + " `check_unit` in study.yaml.</p>"));
    assertFalse(Files.exists(study.resolve("results/drift.csv")));
    assertFalse(page.contains(">steady<"));
  }

  @Test
  void withTooFewSessionsTheReportSaysThatThereAreNoLimits() throws IOException {
    Path study = SessionStudy.write(folder.resolve("few"), 5, "check_unit: Oak 1");
    StringWriter err = new StringWriter();
    assertEquals(
        0,
        Main.run(
            new PrintWriter(new StringWriter()), new PrintWriter(err), "study", study.toString()),
        err.toString());
    String page = Files.readString(study.resolve("results/report.html"));
    assertTrue(
        page.contains(
            "<li>Head with soft cheeks: 5 sessions with the check unit; limits cannot be had from"
                + " fewer than 6, because one odd session would widen the limits it is held"
                + " against.</li>"));
    assertTrue(page.contains("Head with soft cheeks: too few sessions for limits"));
    assertFalse(page.contains(" out of control by "));
    assertTrue(
        rows(study.resolve("results/drift.csv")).stream()
            .skip(1)
            .allMatch(r -> r[13].equals("no limits") && r[7].isEmpty()));
  }

  /** Greatest standard deviation between units from 4 kHz on: drift of one session is in it. */
  private static double top(Path results) throws IOException {
    return ReferenceTable.rows(results.resolve("transfer.csv")).stream()
        .filter(r -> !r.get("unit_sd_db").isEmpty() && Double.parseDouble(r.get("band_hz")) > 3900)
        .mapToDouble(r -> Double.parseDouble(r.get("unit_sd_db")))
        .max()
        .orElseThrow();
  }
}
