package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.Dense;

/** {@code twinrig compare} through the program's own door, on small studies as files. */
class CompareCommandTest {
  @TempDir private static Path folder;
  private static String first;
  private static String second;
  private static String shifted;

  @BeforeAll
  static void makeStudies() throws IOException {
    first = study("north", 11, List.of("in-ear", "on-ear"), 0);
    second = study("south", 12, List.of("in-ear", "closed over-ear"), 0);
    shifted = study("east", 13, List.of("in-ear"), 1);
  }

  /** Units that differ a little about 2 dB, level over frequency; a step from 2 kHz to 4 kHz. */
  private static String study(String name, int seed, List<String> kinds, double stepDb)
      throws IOException {
    Path place = Files.createDirectories(folder.resolve(name));
    List<String> units = new ArrayList<>(List.of("unit,kind"));
    List<String> captures = new ArrayList<>(List.of("unit,fixture,side,seating,file"));
    java.util.Random random = new java.util.Random(seed);
    for (String kind : kinds) {
      for (int u = 1; u <= 8; u++) {
        String unit = (kind + " " + u).replace(' ', '-');
        units.add(unit + "," + kind);
        double own = 0.1 * random.nextGaussian();
        for (int seating = 1; seating <= 2; seating++) {
          double plate = 0.05 * random.nextGaussian();
          double head = 2 + own + 0.05 * random.nextGaussian();
          captures.add(capture(place, new Row(unit, "plate", seating), plate, 0));
          captures.add(capture(place, new Row(unit, "head", seating), head, stepDb));
        }
      }
    }
    Files.write(place.resolve("units.csv"), units);
    Files.write(place.resolve("captures.csv"), captures);
    yaml(place, name, "Head with soft cheeks", "{ per_octave: 3, from_hz: 100, to_hz: 10000 }");
    return place.toString();
  }

  private static void yaml(Path place, String title, String head, String bands) throws IOException {
    Files.writeString(
        place.resolve("study.yaml"),
        String.join(
            "\n",
            "title: Lab " + title,
            "from: plate",
            "to: head",
            "fixtures:",
            "  plate: { label: Flat plate, simulates_hz: [20, 20000] }",
            "  head: { label: " + head + ", simulates_hz: [20, 20000] }",
            "units: units.csv",
            "captures: captures.csv",
            "bands: " + bands,
            "anchor: none",
            ""));
  }

  private record Row(String unit, String fixture, int seating) {}

  private static String capture(Path place, Row row, double levelDb, double stepDb)
      throws IOException {
    String file = row.unit + "-" + row.fixture + "-" + row.seating + ".csv";
    double high = levelDb + stepDb;
    // Below the bands every capture is its own: of captures that are the same only one counts.
    double own = levelDb + 30 * new Random(file.hashCode()).nextDouble();
    String text =
        Dense.text(
            new double[] {20, 60, 1995, 1996, 3981, 3982, 20_000},
            new double[] {own, levelDb, levelDb, high, high, levelDb, levelDb});
    Files.writeString(place.resolve(file), text.replace("\r\n", "\n"));
    return String.join(",", row.unit, row.fixture, "M", Integer.toString(row.seating), file);
  }

  @Test
  void studiesOfOneTruthAreEquivalent() throws IOException {
    Path out = folder.resolve("alike");
    Ran ran = Ran.of("compare", first, second, "--out", out.toString());
    assertEquals(0, ran.status(), ran.err());
    assertEquals(
        """
        2 studies from Flat plate to Head with soft cheeks: Lab north; Lab south.
        in-ear, Lab north (n = 8) against Lab south (n = 8): nowhere shown to be different; shown \
        to be equivalent within 0.50 dB over 7.0 octaves (89.1 Hz to 11.2 kHz); over the other 0.0 \
        octaves nothing is shown. The means differ most at 2.51 kHz, by LARGEST dB. 8 units have \
        the same name in both: if they are the same specimens, the studies are surer of their \
        difference than is said here.
        on-ear is found in Lab north only.
        closed over-ear is found in Lab south only.
        Two studies say next to nothing about how far labs differ: the spread between labs rests \
        on one difference, and the intervals of the combined transfer are wide for it.
        Different and equivalent hold for all bands of a kind and pair of studies at once; at and \
        near the anchor levels were made equal.
        Report: OUT
        """,
        ran.out()
            .replace(out.resolve("report.html").toString(), "OUT")
            .replaceAll(
                "at [0-9.]+ k?Hz, by -?[0-9.]+ ± [0-9.]+ dB", "at 2.51 kHz, by LARGEST dB"));
    assertEquals(
        List.of(
            "combined.csv",
            "comparison.csv",
            "figures/difference-in-ear-1-2.png",
            "figures/difference-in-ear-1-2.svg",
            "manifest.sha256",
            "report.html",
            "run.json"),
        Ran.files(out));
    List<String> rows = Files.readAllLines(out.resolve("comparison.csv"));
    assertEquals(
        "kind,first,second,band_hz,units_first,units_second,difference_db,se_db,"
            + "degrees_of_freedom,ci_low_db,ci_high_db,sim_low_db,sim_high_db,different,"
            + "equivalent,equivalent_at_once",
        rows.get(0));
    assertEquals(1 + 21, rows.size());
    assertTrue(rows.get(1).startsWith("in-ear,Lab north,Lab south,100.0000,8,8,"), rows.get(1));
    assertEquals(
        "kind,band_hz,studies,units,mean_db,se_db,tau_db,ci_low_db,ci_high_db,further_low_db,"
            + "further_high_db",
        Files.readAllLines(out.resolve("combined.csv")).get(0));
    String page = Files.readString(out.resolve("report.html"));
    assertTrue(page.contains("<h1>Study against study</h1>"));
    assertTrue(page.contains("In-ear: no difference shown, equivalent over 7.0 octaves"));
    assertTrue(page.contains("hearing damage is permanent"));
    assertFalse(page.contains("NaN"));
    assertFalse(page.contains("http://") && page.contains("src=\"http"));
  }

  @Test
  void aStepOfOneDecibelIsFoundWhereItIs() throws IOException {
    Ran ran = Ran.of("compare", first, second, shifted, "--json");
    assertEquals(0, ran.status(), ran.err());
    JsonNode root = new ObjectMapper().readTree(ran.out());
    assertEquals(3, root.get("studies").size());
    JsonNode pairs = root.get("pairs");
    assertEquals(3, pairs.size());
    assertEquals(0, pairs.get(0).get("different").size());
    for (int k = 1; k < 3; k++) {
      JsonNode different = pairs.get(k).get("different");
      assertEquals(1, different.size(), ran.out());
      // Bands whose power the step reaches: the octave itself, a third either side at most.
      assertEquals(1995, different.get(0).get("from_hz").asDouble(), 420);
      assertEquals(3981, different.get(0).get("to_hz").asDouble(), 1040);
    }
    assertEquals("closed over-ear", root.get("kinds_in_one_study").get(1).get("kind").asText());
    Ran words = Ran.of("compare", first, second, shifted);
    assertTrue(
        words
            .out()
            .contains(
                "With 3 studies the spread between labs is known to an order of magnitude, no more.\n"),
        words.out());
  }

  @Test
  void studiesThatCannotBeComparedAreRefused() throws IOException {
    String other = study("west", 14, List.of("in-ear"), 0);
    yaml(
        Path.of(other),
        "west",
        "Another head",
        "{ per_octave: 6, from_hz: 100, to_hz: 10000 }\nconfidence: 0.9");
    Ran ran = Ran.of("compare", first, other);
    assertEquals(1, ran.status());
    assertEquals(
        other
            + ": the study goes from `Flat plate` to `Another head`, but "
            + first
            + " goes from `Flat plate` to `Head with soft cheeks`; compare studies of the same two"
            + " fixtures, with the same labels in study.yaml\n"
            + other
            + ": the study has other bands than "
            + first
            + "; set the same `bands` in study.yaml of both\n"
            + other
            + ": the study has another confidence than "
            + first
            + "; set the same `confidence` in study.yaml of both\n",
        ran.err());
    Ran twice = Ran.of("compare", first, first);
    assertEquals(1, twice.status());
    assertEquals(
        first
            + ": the study is the same as "
            + first
            + "; give each study once: a study says nothing about itself\n",
        twice.err());
    Ran alone = Ran.of("compare", first);
    assertEquals(2, alone.status());
    assertEquals(
        "name two studies or more: one has nothing to be compared with",
        alone.err().lines().findFirst().orElseThrow());
    String strange = study("far", 15, List.of("ear-cup"), 0);
    Ran none = Ran.of("compare", first, strange);
    assertEquals(1, none.status());
    assertEquals(
        strange
            + ": no kind is found in two of the studies; they have `in-ear`, `on-ear`, `ear-cup`;"
            + " write kinds the same way in units.csv of each\n",
        none.err());
  }

  @Test
  void captureFilesOfOneStudyAreNotAnotherLab() throws IOException {
    Path copy = Files.createDirectories(folder.resolve("copied"));
    for (String file : Ran.files(Path.of(second))) {
      Files.copy(Path.of(second, file), copy.resolve(file));
    }
    yaml(
        copy,
        "copied",
        "Head with soft cheeks",
        "{ per_octave: 3, from_hz: 100, to_hz: 10000 }\nseed: 9");
    Ran same = Ran.of("compare", first, second, copy.toString());
    assertEquals(1, same.status());
    assertEquals(
        copy
            + ": 64 of the 64 capture files it rests on are the same as in "
            + second
            + "; compare studies that have no captures in common: the same captures, whatever the"
            + " settings, say nothing about another lab\n",
        same.err());
    assertEquals("", same.out());

    String other = study("borrowing", 16, List.of("in-ear"), 0);
    Path borrowed = Path.of("in-ear-3-head-2.csv");
    Files.copy(
        Path.of(first).resolve(borrowed),
        Path.of(other).resolve(borrowed),
        StandardCopyOption.REPLACE_EXISTING);
    Ran one = Ran.of("compare", first, other);
    assertEquals(1, one.status());
    assertEquals(
        other
            + ": 1 of the 32 capture files it rests on is the same as in "
            + first
            + "; compare studies that have no captures in common: the same captures, whatever the"
            + " settings, say nothing about another lab\n",
        one.err());
  }
}
