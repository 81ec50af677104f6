package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.band.Band;

/** Published comparisons of two instruments, put through files, study and transfer.csv. */
class PublishedStudiesTest {
  @TempDir private Path folder;

  /**
   * Bland and Altman 1986, Lancet 327:307, Table 1: peak flow of 17 subjects with two meters, first
   * readings. A level of 0.1 dB stands for 1 l/min. Published: mean difference -2.1 (large minus
   * mini), SD 38.8, interval of the bias -22.0 to 17.8; computed from the same data with numpy:
   * -2.1176470588, 38.7651298736, -22.0488376970 to 17.8135435790.
   */
  @Test
  void blandAndAltmansMetersAreAStudyOfTwoFixtures() throws IOException {
    List<Map<String, String>> subjects = ReferenceTable.rows("method_pefr_two_meters.csv");
    StudyFiles files = new StudyFiles(folder, "{ per_octave: 1, from_hz: 1000, to_hz: 2000 }");
    for (Map<String, String> s : subjects) {
      String unit = "subject " + s.get("subject");
      files.unit(unit);
      files.capture(unit, "mini", 1, flat("mini_1", s));
      files.capture(unit, "large", 1, flat("large_1", s));
    }
    files.write("mini", "large");
    Map<String, String> band = run().get(0);
    assertEquals(-0.21176470588, number(band, "offset_db"), 1e-6);
    assertEquals(3.87651298736, number(band, "unit_sd_db"), 1e-6);
    assertEquals(-2.20488376970, number(band, "ci_low_db"), 1e-6);
    assertEquals(1.78135435790, number(band, "ci_high_db"), 1e-6);
    assertEquals("17", band.get("units"));
    // The limits of agreement hold for one new subject when the bias is known; leaving out adds the
    // factor n/(n-1) to every residual: half = t(16)·SD·√((n-1)/n)·n/(n-1).
    double t16 = 2.119905299221; // R 4.2.2: qt(0.975, 16), from memory of tables: 2.120
    assertEquals(
        t16 * 3.87651298736 * Math.sqrt(17.0 / 16), number(band, "prediction_half_db"), 1e-4);
  }

  /** The same with both readings: seating scatter of each meter is published. */
  @Test
  void blandAndAltmansRepeatabilityIsSeatingScatter() throws IOException {
    StudyFiles files = new StudyFiles(folder, "{ per_octave: 1, from_hz: 1000, to_hz: 2000 }");
    for (Map<String, String> s : ReferenceTable.rows("method_pefr_two_meters.csv")) {
      String unit = "subject " + s.get("subject");
      files.unit(unit);
      for (int k = 1; k <= 2; k++) {
        files.capture(unit, "mini", k, flat("mini_" + k, s));
        files.capture(unit, "large", k, flat("large_" + k, s));
      }
    }
    files.write("mini", "large");
    Map<String, String> band = run().get(0);
    // Within-subject SD 15.3066690579 (large) and 19.9108306324 (mini), mean difference of the
    // two-reading means -6.0294117647: numpy on the published data; the paper prints 21.6/√2,
    // 28.2/√2.
    assertEquals(1.99108306324, number(band, "seat_sd_from_db"), 1e-6);
    assertEquals(1.53066690579, number(band, "seat_sd_to_db"), 1e-6);
    assertEquals(-0.60294117647, number(band, "offset_db"), 1e-6);
  }

  /**
   * One insert earphone on a 2 cm³ coupler (HA-2) and on the occluded-ear simulator: reference
   * thresholds of ISO 389-2:1994 and ANSI S3.6-1996. Their difference must come back band by band
   * from the files of six units that differ from it by deviations adding up to zero.
   */
  @Test
  void aPublishedFixtureDifferenceComesBackFromFiles() throws IOException {
    List<Map<String, String>> published = new ArrayList<>();
    for (Map<String, String> row :
        ReferenceTable.rows("acoustic_retspl_insert_three_fixtures.csv")) {
      // 750, 1500, 3000 and 6000 Hz are no mid-band frequencies of octaves.
      if (List.of("125", "250", "500", "1000", "2000", "4000", "8000")
          .contains(row.get("frequency_hz"))) {
        published.add(row);
      }
    }
    double[] deviations = {-0.5, -0.3, -0.1, 0.1, 0.3, 0.5};
    StudyFiles files = new StudyFiles(folder, "{ per_octave: 1, from_hz: 125, to_hz: 8000 }");
    for (int u = 0; u < deviations.length; u++) {
      String unit = "Rowan " + (u + 1);
      files.unit(unit);
      files.capture(unit, "coupler", 1, stepped(published, "retspl_ha2_2cc_db", u));
      files.capture(
          unit,
          "simulator",
          1,
          stepped(published, "retspl_occluded_ear_sim_db", u + deviations[u]));
    }
    files.write("coupler", "simulator");
    List<Map<String, String>> bands = run();
    assertEquals(published.size(), bands.size());
    for (int b = 0; b < bands.size(); b++) {
      assertEquals(
          number(published.get(b), "diff_sim_minus_ha2_db"),
          number(bands.get(b), "offset_db"),
          1e-6);
      // SD of the deviations over √6, Student's t with 5 degrees of freedom (2.571, tables).
      double se = Math.sqrt(0.7 / 5 / 6);
      assertEquals(se, number(bands.get(b), "se_db"), 1e-6);
      assertEquals(
          number(bands.get(b), "offset_db") + 2.570581835636 * se,
          number(bands.get(b), "ci_high_db"),
          1e-6);
    }
  }

  private List<Map<String, String>> run() throws IOException {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status = Main.run(new PrintWriter(out), new PrintWriter(err), "study", folder.toString());
    assertEquals(0, status, err.toString());
    List<Map<String, String>> rows = ReferenceTable.rows(folder.resolve("results/transfer.csv"));
    assertTrue(!rows.isEmpty(), "transfer.csv has bands");
    return rows;
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /** A reading as a curve flat over the bands; below them it is its own, as no two captures are. */
  private static String flat(String reading, Map<String, String> subject) {
    double db = Double.parseDouble(subject.get(reading)) / 10;
    int which = List.of("mini_1", "mini_2", "large_1", "large_2").indexOf(reading);
    double own = 0.5 * (4 * Integer.parseInt(subject.get("subject")) + which);
    return Dense.text(new double[] {20, 50, 200, 20_000}, new double[] {db, db + own, db, db});
  }

  /** A published table as a response that is flat over every octave band. */
  private static String stepped(List<Map<String, String>> rows, String column, double shiftDb) {
    List<Double> hz = new ArrayList<>(List.of(15.0, 50.0));
    // Below the bands no two captures are the same.
    List<Double> levels = new ArrayList<>(List.of(shiftDb * 3, shiftDb));
    for (Map<String, String> row : rows) {
      Band band = Band.ofMidFrequency(Double.parseDouble(row.get("frequency_hz")), 1);
      double db = Double.parseDouble(row.get(column)) + shiftDb;
      // Ends a hair inside the neighbours, so that each band is wholly covered.
      hz.addAll(List.of(band.lowerHz() * (1 - 1e-10) + 1e-9, band.upperHz() * (1 - 2e-10)));
      levels.addAll(List.of(db, db));
    }
    hz.add(Band.ofMidFrequency(8000, 1).upperHz() + 1);
    levels.add(0.0);
    return Dense.text(
        hz.stream().mapToDouble(f -> f).toArray(), levels.stream().mapToDouble(db -> db).toArray());
  }

  /** Writes a study by hand. */
  private static final class StudyFiles {
    private final Path folder;
    private final String bands;
    private final List<String> units = new ArrayList<>(List.of("unit,kind"));
    private final List<String> captures =
        new ArrayList<>(List.of("unit,fixture,side,seating,file"));

    StudyFiles(Path folder, String bands) {
      this.folder = folder;
      this.bands = bands;
    }

    void unit(String name) {
      units.add(name + ",in-ear");
    }

    void capture(String unit, String fixture, int seating, String content) throws IOException {
      String file = unit.replace(' ', '-') + "-" + fixture + "-" + seating + ".csv";
      Files.writeString(folder.resolve(file), content);
      captures.add(String.join(",", unit, fixture, "M", Integer.toString(seating), file));
    }

    void write(String from, String to) throws IOException {
      Files.write(folder.resolve("units.csv"), units);
      Files.write(folder.resolve("captures.csv"), captures);
      Files.writeString(
          folder.resolve("study.yaml"),
          String.join(
              "\n",
              "title: Published",
              "from: " + from,
              "to: " + to,
              "fixtures:",
              "  " + from + ": { label: " + from + ", simulates_hz: [20, 20000] }",
              "  " + to + ": { label: " + to + ", simulates_hz: [20, 20000] }",
              "units: units.csv",
              "captures: captures.csv",
              "bands: " + bands,
              "model: offset",
              "anchor: none",
              ""));
    }
  }
}
