package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.ReferenceTable;

/** The worked studies say what their README says of them. */
class WorkedStudiesTest {
  private static final Path NO = Path.of("studies", "planted-no");
  private static final Path COUPLERS = Path.of("studies", "published-couplers");

  @TempDir private static Path out;

  private static Map<String, Map<Double, Double>> truth;

  @BeforeAll
  static void runThePlantedStudy() throws IOException {
    assertEquals(0, Ran.of("study", NO.toString(), "--out", out.resolve("no").toString()).status());
    Ran graphs =
        Ran.of(
            "translate",
            NO.toString(),
            "--catalogue",
            NO.resolve("catalogue.csv").toString(),
            "--out",
            out.resolve("graphs").toString());
    assertEquals(0, graphs.status(), graphs.err());
    assertTrue(
        graphs
            .out()
            .contains(
                "Re-expressed, 0 may be published without marks, 0 with their marks; 6 must be measured"
                    + " again.\n"
                    + "That the old fixture is still what it was is taken for granted: no graph is of a"
                    + " unit the study's captures show on it today.\n"
                    + "Too little evidence for in-ear: the study has 4 units and asks for 5, so"
                    + " nothing it translates is reliable.\n"),
        graphs.out());
    truth = new HashMap<>();
    for (Map<String, String> row : ReferenceTable.rows(NO.resolve("truth/catalogue.csv"))) {
      truth
          .computeIfAbsent(row.get("graph"), g -> new HashMap<>())
          .put(number(row, "band_hz"), number(row, "true_to_db"));
    }
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /** One band of a re-expressed graph: its error against the truth, and its half-width, dB. */
  private record Miss(double hz, double errorDb, double halfDb) {}

  private static List<Miss> errors(String graph, double fromHz, double toHz) throws IOException {
    List<Map<String, String>> bands =
        ReferenceTable.rows(out.resolve("graphs/translated/" + graph + ".csv")).stream()
            .filter(row -> !row.get("to_db").isEmpty())
            .toList();
    // The truth stands relative to its mean from 300 Hz to 1 kHz.
    double mean =
        bands.stream()
            .filter(r -> number(r, "band_hz") >= 300 && number(r, "band_hz") <= 1000)
            .mapToDouble(r -> number(r, "to_db"))
            .average()
            .orElseThrow();
    return bands.stream()
        .filter(r -> number(r, "band_hz") >= fromHz && number(r, "band_hz") < toHz)
        .map(
            r ->
                new Miss(
                    number(r, "band_hz"),
                    number(r, "to_db") - mean - at(graph, number(r, "band_hz")),
                    (number(r, "high_db") - number(r, "low_db")) / 2))
        .toList();
  }

  private static double at(String graph, double hz) {
    return truth.get(graph).entrySet().stream()
        .filter(e -> Math.abs(e.getKey() / hz - 1) < 0.001)
        .findFirst()
        .orElseThrow()
        .getValue();
  }

  private static String worst(String graph, double fromHz, double toHz) throws IOException {
    double worst =
        errors(graph, fromHz, toHz).stream()
            .mapToDouble(e -> Math.abs(e.errorDb))
            .max()
            .orElseThrow();
    return String.format(Locale.ROOT, "%.1f", worst);
  }

  private static long outside(String graph, double fromHz, double toHz) throws IOException {
    return errors(graph, fromHz, toHz).stream().filter(e -> Math.abs(e.errorDb) > e.halfDb).count();
  }

  @Test
  void fourUnitsAreTooFewWhateverTheyAgreeOn() throws IOException {
    List<Map<String, String>> zones =
        ReferenceTable.rows(out.resolve("no/zones.csv")).stream()
            .filter(z -> z.get("kind").equals("in-ear"))
            .toList();
    assertEquals(1, zones.size());
    assertEquals("unreliable", zones.get(0).get("mark"));
    assertTrue(zones.get(0).get("reasons").startsWith("few units"), zones.toString());
    // The table of the README.
    assertEquals(List.of("2.1", "4.4", "9.7"), worstOf("G-002"));
    assertEquals(List.of("0.7", "5.4", "9.1"), worstOf("G-004"));
    assertEquals(List.of("0.8", "1.5", "4.4"), worstOf("G-006"));
    assertEquals(52, errors("G-002", 100, 2000).size());
    assertEquals(22, outside("G-002", 100, 2000));
  }

  private static List<String> worstOf(String graph) throws IOException {
    return List.of(worst(graph, 100, 2000), worst(graph, 2000, 6300), worst(graph, 6300, 10_700));
  }

  @Test
  void aResonanceThatWandersIsLostAndTheRestHolds() throws IOException {
    assertTrue(
        ReferenceTable.rows(out.resolve("no/zones.csv")).stream()
            .anyMatch(
                z ->
                    z.get("kind").equals("closed over-ear")
                        && z.get("mark").equals("unreliable")
                        && z.get("reasons").contains("resonance wanders")));
    Map<String, String> shift =
        ReferenceTable.rows(out.resolve("no/resonance-shifts.csv")).stream()
            .filter(s -> s.get("kind").equals("closed over-ear") && s.get("shape").equals("notch"))
            .findFirst()
            .orElseThrow();
    assertEquals(0.19, number(shift, "sd_octaves"), 0.005);
    assertEquals(5865, number(shift, "wander_from_hz"), 5);
    assertEquals(10_737, number(shift, "wander_to_hz"), 5);
    for (String graph : List.of("G-001", "G-003", "G-005")) {
      assertEquals(0, outside(graph, 100, 1600), graph);
      assertEquals(0, outside(graph, 5865, 10_737), graph);
      assertTrue(Double.parseDouble(worst(graph, 5865, 10_737)) <= 2.5, graph);
    }
  }

  @Test
  void whatTheLabIsReadyToLoseDecides() throws IOException {
    for (Map<String, String> row : ReferenceTable.rows(out.resolve("graphs/summary.csv"))) {
      assertEquals("re-measure", row.get("decision"), row.toString());
    }
  }

  /** Where a whole fixture drops out, what was refused is said before that no pair is left. */
  @Test
  void aMistypedFixtureIsNamedBeforeThePairsThatAreMissing() throws IOException {
    Path study = out.resolve("mistyped");
    Ran.copy(NO, study);
    Path table = study.resolve("captures.csv");
    Files.writeString(table, Files.readString(table).replace(",head,", ",haed,"));
    Ran run = Ran.of("study", study.toString());
    assertEquals(1, run.status());
    assertTrue(
        run.err()
            .startsWith(
                "captures.csv:4: there is no fixture `haed` in study.yaml (in 26 rows, lines 4, 5,"
                    + " 8, 9, 12, 13 and so on); did you mean `head`?"),
        run.err());
    assertTrue(
        run.err()
            .endsWith(
                "study.yaml: no unit has an accepted capture on both fixtures; mend what was"
                    + " refused; if nothing was, capture at least 5 units of a kind on both\n"),
        run.err());
  }

  /** Octaves and half octaves apart, published levels are no curve: nothing is made of them. */
  @Test
  void aTableOfAudiometricFrequenciesHasNoBand() throws IOException {
    Path results = out.resolve("insert");
    Ran run = Ran.of("study", COUPLERS.resolve("insert").toString(), "--out", results.toString());
    assertEquals(0, run.status(), run.err());
    List<Map<String, String>> differences = ReferenceTable.rows(results.resolve("differences.csv"));
    assertEquals(0, differences.size());
    for (Map<String, String> row : ReferenceTable.rows(results.resolve("transfer.csv"))) {
      assertEquals("", row.get("offset_db"));
      assertEquals("", row.get("prediction_half_db"));
      assertEquals("unreliable", row.get("mark"));
      assertEquals("no data", row.get("reasons"));
    }
  }

  @Test
  void twoTablesWithoutACommonEarphoneAreNoStudy() {
    Path study = COUPLERS.resolve("supra-aural");
    Ran run = Ran.of("study", study.toString(), "--out", out.resolve("supra").toString());
    assertEquals(1, run.status());
    assertEquals(
        "study.yaml: no unit has an accepted capture on both fixtures; mend what was refused; if"
            + " nothing was, capture at least 5 units of a kind on both\n",
        run.err());
  }

  /** ISO 389-1:1998 and ISO 389-2:1994 as committed with the tests, against the worked studies. */
  @Test
  void theWorkedStudiesHoldThePublishedValues() throws IOException {
    holds("insert/captures/type-a-coupler.csv", "insert_three_fixtures", "retspl_ha2_2cc_db");
    holds(
        "insert/captures/type-a-simulator.csv",
        "insert_three_fixtures",
        "retspl_occluded_ear_sim_db");
    holds("insert/captures/type-a-coupler-ha1.csv", "insert_three_fixtures", "retspl_ha1_2cc_db");
    String supra = "supraaural_two_couplers";
    holds("supra-aural/captures/type-a-coupler.csv", supra, "type_a_coupler_60318_3_db");
    holds("supra-aural/captures/type-b-coupler.csv", supra, "type_b_coupler_60318_3_db");
    holds(
        "supra-aural/captures/any-other-artificial-ear.csv",
        supra,
        "any_other_artificial_ear_60318_1_db");
  }

  private static void holds(String capture, String published, String column) throws IOException {
    List<Map<String, String>> there = ReferenceTable.rows(COUPLERS.resolve(capture));
    List<Map<String, String>> source = ReferenceTable.rows("acoustic_retspl_" + published + ".csv");
    assertEquals(source.size(), there.size());
    for (int k = 0; k < source.size(); k++) {
      assertEquals(
          number(source.get(k), "frequency_hz"), number(there.get(k), "frequency_hz"), capture);
      assertEquals(number(source.get(k), column), number(there.get(k), "level_db"), capture);
    }
  }
}
