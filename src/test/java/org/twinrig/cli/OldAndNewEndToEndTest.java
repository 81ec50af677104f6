package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.scripting.LabStudy;

/** Small studies in files whose results can be worked out by hand. */
class OldAndNewEndToEndTest {
  /** What old graphs of six units show more than today's captures from 4.4 kHz on, dB. */
  private static final double[] MORE = {1.2, 1.9, 1.4, 1.6, 1.3, 1.6};

  private static final List<String> ONLY_THE_HEADER =
      List.of("kind,band_hz,units,bias_db,ci_low_db,ci_high_db,spread_db,added_db");

  @TempDir private Path folder;

  /** Levels from 10 Hz to 25 kHz at 48 points an octave. */
  private void curve(String file, DoubleUnaryOperator db) throws IOException {
    StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
    for (int k = 0; k <= 541; k++) {
      double hz = 10 * Math.pow(2, k / 48.0);
      text.append(String.format(Locale.ROOT, "%.9f,%.9f%n", hz, db.applyAsDouble(hz)));
    }
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  /** Flat from 400 Hz to 1.2 kHz, with slopes below and above, dB an octave. */
  private static double unitDb(double hz, double bass, double treble) {
    return bass * Math.min(0, Math.log(hz / 400) / Math.log(2))
        + treble * Math.max(0, Math.log(hz / 1200) / Math.log(2));
  }

  /** A study of in-ears with a seating on either fixture each, at these levels. */
  private void study(double[] plateDb, double[] headDb, String sessions) throws IOException {
    List<String> units = new ArrayList<>(List.of("unit,kind"));
    List<String> captures = new ArrayList<>(List.of("unit,fixture,side,seating,file,session"));
    for (int u = 0; u < plateDb.length; u++) {
      double level = plateDb[u];
      double now = headDb[u];
      double slope = 0.1 * (u % 3) - 0.05 * u;
      units.add("Alder " + u + ",in-ear");
      captures.add(
          "Alder %d,plate,M,1,c/p%d.csv,%s".formatted(u, u, sessions.isEmpty() ? "" : "p"));
      captures.add("Alder %d,head,M,1,c/h%d.csv,%s".formatted(u, u, sessions.isEmpty() ? "" : "h"));
      curve("c/p" + u + ".csv", hz -> level + unitDb(hz, slope, 0.2 + slope));
      curve("c/h" + u + ".csv", hz -> now + unitDb(hz, 0.5 - slope, -0.3 + 0.02 * level));
    }
    Files.write(folder.resolve("units.csv"), units);
    Files.write(folder.resolve("captures.csv"), captures);
    Files.writeString(
        folder.resolve("study.yaml"),
        """
        title: By hand
        from: plate
        to: head
        fixtures: { plate: { label: Plate }, head: { label: Head } }
        units: units.csv
        captures: captures.csv
        bands: { per_octave: 3 }
        """
            + (sessions.isEmpty() ? "" : "sessions: sessions.csv\n"));
    if (!sessions.isEmpty()) {
      Files.writeString(folder.resolve("sessions.csv"), sessions);
    }
  }

  private Path translated(String unit, double[] moreDb, String said) throws IOException {
    study(new double[6], new double[] {0.3, -0.2, 0.1, 0.5, 0, -0.4}, "");
    List<String> graphs =
        new ArrayList<>(List.of("graph,unit,kind,file,seatings,averaging,smoothing"));
    for (int u = 0; u < 6; u++) {
      double slope = 0.1 * (u % 3) - 0.05 * u;
      double more = moreDb[u];
      double level = 80 + u;
      curve(
          "old/g" + u + ".csv",
          hz ->
              level
                  + unitDb(hz, slope, 0.2 + slope)
                  + more * Math.min(1, Math.max(0, Math.log(hz / 4000) / Math.log(1.1))));
      graphs.add("G-%d,%s %d,in-ear,old/g%d.csv,%s".formatted(u, unit, u, u, said));
    }
    Files.write(folder.resolve("catalogue.csv"), graphs);
    Path out = folder.resolve("out");
    Ran ran =
        Ran.of(
            "translate",
            folder.toString(),
            "--catalogue",
            folder.resolve("catalogue.csv").toString(),
            "--out",
            out.toString());
    assertEquals(0, ran.status(), ran.err());
    return out;
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /** Mean 1.5 dB, variance 0.32/5 dB²; t_5 = 2.570582; the old level is lined up and cancels. */
  /** All but that these units were measured on the new fixture already. */
  private static List<Map<String, String>> doubts(Path out) throws IOException {
    return ReferenceTable.rows(out.resolve("doubts.csv")).stream()
        .filter(d -> !d.get("doubt").equals("already measured"))
        .toList();
  }

  @Test
  void oldGraphsAreHeldAgainstTodaysCaptures() throws IOException {
    Path out = translated("Alder", MORE, "1,db,none");
    int high = 0;
    for (Map<String, String> row : ReferenceTable.rows(out.resolve("continuity.csv"))) {
      assertEquals("in-ear", row.get("kind"));
      assertEquals("6", row.get("units"));
      double hz = number(row, "band_hz");
      if (hz > 5500) {
        double half = 2.570582 * Math.sqrt(0.32 / 5 / 6);
        assertEquals(1.5, number(row, "bias_db"), 1e-3);
        assertEquals(1.5 - half, number(row, "ci_low_db"), 1e-3);
        assertEquals(1.5 + half, number(row, "ci_high_db"), 1e-3);
        assertEquals(Math.sqrt(0.32 / 5), number(row, "spread_db"), 1e-3);
        assertEquals(Math.sqrt(1.5 * 1.5 + 0.32 / 6), number(row, "added_db"), 1e-3);
        high++;
      } else if (hz < 3500) {
        assertEquals(0, number(row, "bias_db"), 1e-3);
        assertEquals(0, number(row, "spread_db"), 1e-3);
      }
    }
    assertTrue(high >= 5, "bands: " + high);
    List<Map<String, String>> doubts = doubts(out);
    assertEquals(1, doubts.size());
    Map<String, String> doubt = doubts.get(0);
    assertEquals("catalogue", doubt.get("subject"));
    assertEquals("in-ear", doubt.get("name"));
    assertEquals("old fixture changed", doubt.get("doubt"));
    assertEquals("1.50 dB", doubt.get("size"));
    assertTrue(
        doubt
            .get("likely_cause")
            .matches(
                "old graphs of 6 units show 1[.]50 dB more from .* kHz to .* kHz than today's captures"
                    + " [(]beyond chance from .* dB on[)][.]"),
        doubt.get("likely_cause"));
  }

  @Test
  void unitsThatDifferByChanceRaiseNoDoubt() throws IOException {
    Path out = translated("Alder", new double[] {0.3, -0.2, 0.1, -0.3, 0.2, 0}, "1,db,none");
    assertEquals(List.of(), doubts(out));
  }

  @Test
  void withoutSuchUnitsThereIsNothingToHoldThemAgainst() throws IOException {
    Path out = translated("Birch", MORE, "1,db,none");
    assertEquals(ONLY_THE_HEADER, Files.readAllLines(out.resolve("continuity.csv")));
    assertEquals(List.of(), ReferenceTable.rows(out.resolve("doubts.csv")));
  }

  /** What differs by the way of averaging says nothing of the fixture. */
  @ParameterizedTest
  @CsvSource({"5,best seal,none", ",power,none"})
  void graphsThatCannotBeMadeAlikeAreNotHeldAgainstThem(
      String seatings, String averaging, String smoothing) throws IOException {
    String said = (seatings == null ? "" : seatings) + "," + averaging + "," + smoothing;
    Path out = translated("Alder", MORE, said);
    assertEquals(ONLY_THE_HEADER, Files.readAllLines(out.resolve("continuity.csv")));
    Map<String, String> handled = ReferenceTable.rows(out.resolve("handling.csv")).get(0);
    assertEquals("1", handled.get("seatings_taken"));
    assertEquals(
        averaging.equals("power") ? "power not corrected" : "best seal", handled.get("averaging"));
  }

  @Test
  void capturesBeyondTheUsableRangeAreNoted() throws IOException, UnusableInput {
    study(new double[] {90, 91, 92}, new double[] {91, 92.3, 93.2}, "");
    Path yaml = folder.resolve("study.yaml");
    Files.writeString(
        yaml,
        Files.readString(yaml)
            .replace("{ label: Plate }", "{ label: Plate, usable_hz: [20, 16000] }")
            .replace("{ label: Head }", "{ label: Head, usable_hz: [20, 20000] }"));
    assertEquals(
        List.of(
            "study.yaml: captures on `plate` reach from 10 Hz to 24.7 kHz and `usable_hz` from 20 Hz"
                + " to 16 kHz: bands outside it are caution at best"),
        LabStudy.read(folder).analyse().problems().stream().map(Problem::text).toList());
  }

  /**
   * The plate's calibrator read 0.2 dB high, so 0.2 dB is taken off: units shift by 1.2, 1.5 and
   * 1.4 dB, with variance 0.07/3 dB²; one seating each, so all of it is between units; t_2 =
   * 4.302653.
   */
  @Test
  void levelsShiftByWhatCalibratedCapturesSay() throws IOException {
    study(
        new double[] {90, 91, 92},
        new double[] {91, 92.3, 93.2},
        """
        session,date,fixture,calibrator_nominal_db,calibrator_read_db
        p,2026-03-02,plate,94,94.2
        h,2026-03-03,head,94,94
        """);
    Ran ran = Ran.of("study", folder.toString(), "--out", folder.resolve("out").toString());
    assertEquals(0, ran.status(), ran.err());
    List<Map<String, String>> rows =
        ReferenceTable.rows(folder.resolve("out").resolve("level-shift.csv"));
    assertEquals(1, rows.size());
    double variance = 0.14 / 3 / 2;
    double half = 4.302653 * Math.sqrt(variance / 3);
    assertEquals("3", rows.get(0).get("units"));
    assertEquals(4.1 / 3, number(rows.get(0), "shift_db"), 1e-3);
    assertEquals(4.1 / 3 - half, number(rows.get(0), "ci_low_db"), 1e-3);
    assertEquals(4.1 / 3 + half, number(rows.get(0), "ci_high_db"), 1e-3);
    assertEquals(
        4.302653 * Math.sqrt(variance * 4 / 3), number(rows.get(0), "prediction_half_db"), 1e-3);
  }
}
