package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.ReferenceTable;
import org.twinrig.band.Band;
import org.twinrig.response.Anchor;
import org.twinrig.study.Setting;

/** The main job through the program's own door. */
class EndToEndTest {
  @TempDir private static Path demonstrated;
  private static Ran first;

  @TempDir private Path folder;

  /** More than one test looks at what the demonstration wrote. */
  @BeforeAll
  static void demonstrate() {
    first = Ran.of("demo", "--out", demonstrated.resolve("a").toString(), "--threads", "2");
    assertEquals(0, first.status(), first.err());
  }

  @Test
  void theDemonstrationGivesTheSameBytesOnAnyNumberOfThreads() throws IOException {
    Ran second = Ran.of("demo", "--out", folder.resolve("b").toString(), "--threads", "1");
    assertEquals(0, second.status(), second.err());
    List<String> files = Ran.files(demonstrated.resolve("a"));
    assertEquals(files, Ran.files(folder.resolve("b")));
    assertTrue(
        files.containsAll(
            List.of(
                "study/transfer.csv",
                "study/zones.csv",
                "study/mark-stability.csv",
                "study/zone-edges.csv",
                "study/equivalence.csv",
                "study/validation.csv",
                "study/validation-holdout.csv",
                "study/validation-units.csv",
                "study/coverage.csv",
                "study/resonances.csv",
                "study/resonance-shifts.csv",
                "study/features.csv",
                "study/ranks.csv",
                "study/rank-correlation.csv",
                "study/error-budget.csv",
                "study/screening.csv",
                "study/translation.json",
                "study/report.html",
                "study/explained.html",
                "study/run.json",
                "study/figures/transfer-in-ear.svg",
                "study/figures/transfer-in-ear.png",
                "study/figures/resonance-in-ear.svg",
                "study/figures/feature-in-ear.png",
                "study/figures/calibration-in-ear.svg",
                "catalogue/summary.csv",
                "catalogue/report.html")),
        files.toString());
    for (String file : files) {
      byte[] a = Files.readAllBytes(demonstrated.resolve("a").resolve(file));
      byte[] b = Files.readAllBytes(folder.resolve("b").resolve(file));
      if (file.endsWith("run.json")) {
        assertEquals(withoutTimings(a), withoutTimings(b), file);
      } else if (Ran.repeats(file)) {
        assertArrayEquals(a, b, file);
      }
      if (file.endsWith(".csv") || file.endsWith(".html") || file.endsWith(".svg")) {
        String text = new String(a, java.nio.charset.StandardCharsets.UTF_8);
        // The page's own script asks isNaN(…).
        assertFalse(text.replace("isNaN(", "").contains("NaN"), file);
      }
    }
    everySettingIsOnRecord(demonstrated.resolve("a/study/run.json"));
    stabilityAgreesWithMarksAndZones(demonstrated.resolve("a").resolve("study"));
    evidenceAgreesWithTransfer(demonstrated.resolve("a").resolve("study"));
    assertTrue(
        first.out().contains("Of 44 graphs, 44 re-expressed and 0 refused."), () -> first.out());
  }

  private static void everySettingIsOnRecord(Path record) throws IOException {
    JsonNode settings = new ObjectMapper().readTree(record.toFile()).get("settings");
    List<String> keys = new ArrayList<>();
    settings.fieldNames().forEachRemaining(keys::add);
    assertEquals(Setting.ALL.stream().map(Setting::key).toList(), keys);
    assertEquals(
        "{\"reliable_db\":1.5,\"caution_db\":3.0,\"equivalence_db\":0.5}",
        settings.get("tolerance").toString());
    assertEquals("canal entrance resonance", settings.at("/zones/0/name").asText());
    assertEquals(
        "{\"in-ear\":[4000.0,15000.0],\"default\":[5000.0,12000.0]}",
        settings.get("resonance_search_hz").toString());
    assertEquals("none", settings.get("capture_smoothing").asText());
    assertEquals(1, settings.at("/publishing/lost_octaves").asDouble());
    assertTrue(settings.get("check_unit").isNull());
  }

  /** Whether a band is one that the default anchor lines levels up by. */
  private static boolean linedUp(double hz) {
    return new Anchor.Range(500, 1000).linesUp(Band.ofMidFrequency(hz, 12));
  }

  /** One row a band with an estimate outside the anchor, and the same estimate. */
  private static void evidenceAgreesWithTransfer(Path study) throws IOException {
    List<String> equivalence = Files.readAllLines(study.resolve("equivalence.csv"));
    assertEquals(
        "kind,band_hz,lower_hz,upper_hz,units,offset_db,equivalence_db,p,tost_low_db,tost_high_db,sim_low_db,"
            + "sim_high_db,equivalent,equivalent_at_once",
        equivalence.get(0));
    List<Map<String, String>> transfer =
        ReferenceTable.rows(study.resolve("transfer.csv")).stream()
            .filter(row -> !row.get("offset_db").isEmpty())
            .filter(row -> !linedUp(Double.parseDouble(row.get("band_hz"))))
            .toList();
    List<Map<String, String>> tested = ReferenceTable.rows(study.resolve("equivalence.csv"));
    assertEquals(transfer.size(), tested.size());
    for (int row = 0; row < transfer.size(); row++) {
      for (String column : List.of("kind", "band_hz", "offset_db", "sim_low_db", "sim_high_db")) {
        assertEquals(transfer.get(row).get(column), tested.get(row).get(column), column);
      }
    }
  }

  private static void stabilityAgreesWithMarksAndZones(Path study) throws IOException {
    List<String> stability = Files.readAllLines(study.resolve("mark-stability.csv"));
    assertEquals(
        "kind,band_hz,mark,kept,reliable_share,caution_share,unreliable_share", stability.get(0));
    List<Map<String, String>> transfer = ReferenceTable.rows(study.resolve("transfer.csv"));
    assertEquals(transfer.size(), stability.size() - 1);
    for (int row = 1; row < stability.size(); row++) {
      Map<String, String> marked = transfer.get(row - 1);
      String[] cells = stability.get(row).split(",", -1);
      assertEquals(
          marked.get("kind") + marked.get("band_hz") + marked.get("mark"),
          cells[0] + cells[1] + cells[2]);
      double sum = 0;
      for (String share : List.of(cells[4], cells[5], cells[6])) {
        sum += Double.parseDouble(share);
      }
      assertEquals(1, sum, 2e-6);
      assertEquals(
          cells[3], cells[4 + List.of("reliable", "caution", "unreliable").indexOf(cells[2])]);
    }
    List<String> edges = Files.readAllLines(study.resolve("zone-edges.csv"));
    assertEquals("kind,edge_hz,below_mark,above_mark,kept", edges.get(0));
    List<String> zones = Files.readAllLines(study.resolve("zones.csv"));
    assertEquals("kind,from_hz,to_hz,octaves,mark,reasons", zones.get(0));
    int edge = 1;
    for (int row = 2; row < zones.size(); row++) {
      String[] below = zones.get(row - 1).split(",", -1);
      String[] above = zones.get(row).split(",", -1);
      if (below[0].equals(above[0])) {
        String start = String.join(",", above[0], above[1], below[4], above[4]);
        assertTrue(edges.get(edge++).startsWith(start + ","), start);
      }
    }
    assertEquals(edges.size(), edge);
  }

  @Test
  void aTranslationFileGivesWhatTheStudyGives() throws IOException {
    Path study = Path.of("studies", "plate-to-head");
    Path catalogue = Path.of("demo-data", "plate-to-head", "catalogue.csv");
    Path results = demonstrated.resolve("a/study");
    Path direct = folder.resolve("direct");
    Path byFile = folder.resolve("by-file");
    assertEquals(
        0,
        Ran.of(
                "translate",
                study.toString(),
                "--catalogue",
                catalogue.toString(),
                "--out",
                direct.toString())
            .status());
    assertEquals(
        0,
        Ran.of(
                "translate",
                results.resolve("translation.json").toString(),
                "--catalogue",
                catalogue.toString(),
                "--out",
                byFile.toString())
            .status());
    for (String file : Ran.files(direct)) {
      if (Ran.repeats(file)) {
        assertArrayEquals(
            Files.readAllBytes(direct.resolve(file)),
            Files.readAllBytes(byFile.resolve(file)),
            file);
      }
    }
  }

  @Test
  void aRefusedCaptureIsNamedAndTheStudyGoesOnUnlessStrict() throws IOException {
    Path study = folder.resolve("study");
    assertEquals(
        0,
        Ran.of(
                "simulate",
                "--out",
                study.toString(),
                "--seed",
                "3",
                "--units",
                "5",
                "--kinds",
                "in-ear",
                "--points",
                "120")
            .status());
    Path spoiled;
    try (Stream<Path> captures = Files.walk(study.resolve("captures"))) {
      spoiled = captures.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
    }
    Files.writeString(spoiled, "frequency_hz,level_db\n20,90\n30,oops\n40,91\n50,90\n60,90\n");
    Ran lenient = Ran.of("study", study.toString());
    assertEquals(0, lenient.status(), lenient.err());
    assertTrue(lenient.err().contains(spoiled.getFileName() + ":3: "), lenient.err());
    assertTrue(
        Files.readString(study.resolve("results/report.html")).contains("oops"),
        "the report names the refused capture");
    Ran translated =
        Ran.of(
            "translate",
            study.toString(),
            "--catalogue",
            "demo-data/plate-to-head/catalogue.csv",
            "--out",
            folder.resolve("translated").toString());
    assertEquals(0, translated.status(), translated.err());
    assertTrue(translated.err().contains("oops"), "translating a study names its refusals too");
    byte[] before = Files.readAllBytes(study.resolve("results/transfer.csv"));
    Ran strict = Ran.of("study", study.toString(), "--strict");
    assertEquals(1, strict.status());
    assertTrue(strict.err().contains("oops"), strict.err());
    assertArrayEquals(before, Files.readAllBytes(study.resolve("results/transfer.csv")));
  }

  @Test
  void aFolderOfTheUsersIsNeverReplaced() throws IOException {
    Path mine = Files.createDirectory(folder.resolve("mine"));
    Files.writeString(mine.resolve("thesis.txt"), "years of work");
    Ran ran = Ran.of("study", "studies/plate-to-head", "--out", mine.toString());
    assertEquals(1, ran.status());
    assertEquals(
        mine
            + ": `thesis.txt` in it was not written by twinrig; move it away, or name another folder"
            + " with --out\n",
        ran.err());
    assertEquals("years of work", Files.readString(mine.resolve("thesis.txt")));
  }

  @Test
  void wrongUsageAndMissingInputHaveTheirOwnStatus() {
    assertEquals(2, Ran.of("study").status());
    assertEquals(2, Ran.of("nonsense").status());
    assertEquals(2, Ran.of("study", "x", "--threads", "0").status());
    assertEquals(2, Ran.of("simulate", "--out", "x", "--seed", "1", "--units", "0").status());
    Ran missing = Ran.of("study", folder.resolve("nowhere").toString());
    assertEquals(1, missing.status());
    assertFalse(missing.err().contains("\tat "), missing.err());
    String nowhere = folder.resolve("nowhere.txt").toString();
    Ran inspected = Ran.of("inspect", nowhere);
    assertEquals(1, inspected.status());
    assertEquals(
        "Not read: "
            + nowhere
            + ": there is no such file; check the name and the folder it is looked for in.",
        inspected.out().strip());
    Ran version =
        Ran.of(
            "translate",
            "demo-data/plate-to-head/units.csv",
            "--catalogue",
            "demo-data/plate-to-head/catalogue.csv",
            "--out",
            folder.resolve("t").toString());
    assertEquals(1, version.status());
    assertTrue(version.err().contains("this is not JSON"), version.err());
  }

  private static String withoutTimings(byte[] json) {
    String text = new String(json, java.nio.charset.StandardCharsets.UTF_8);
    return text.substring(0, text.indexOf("\"timings_s\""));
  }
}
