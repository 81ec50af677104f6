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
        if (!name.equals("run.json")) {
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
    assertTrue(page.contains("head-07: out of control by "));
    assertTrue(page.contains("The lab asked for correction"));
    assertTrue(page.contains("Drift (%)"));
    assertTrue(page.contains("Oak 1; sessions are corrected for its drift"));
    String plain = Files.readString(reported.resolve("report.html"));
    assertFalse(plain.contains("Drift (%)"));
    assertTrue(plain.contains("No capture was changed"));
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
    assertFalse(page.contains("out of control by"));
    assertTrue(
        rows(study.resolve("results/drift.csv")).stream()
            .skip(1)
            .allMatch(r -> r[13].equals("no limits") && r[7].isEmpty()));
  }

  /** Greatest standard deviation between units from 4 kHz on: drift of one session is in it. */
  private static double top(Path results) throws IOException {
    List<String[]> rows = rows(results.resolve("transfer.csv"));
    int sd = List.of(rows.get(0)).indexOf("unit_sd_db");
    return rows.stream()
        .skip(1)
        .filter(r -> !r[sd].isEmpty() && Double.parseDouble(r[1]) > 3900)
        .mapToDouble(r -> Double.parseDouble(r[sd]))
        .max()
        .orElseThrow();
  }
}
