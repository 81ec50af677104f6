package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.band.Band;

/**
 * What nobody measured comes out neither reliable nor for publishing, all the way through files.
 */
class EvidenceTest {
  private static final int UNITS = 8;
  private static final double[] DENSE = spaced(15, 22_000, 24);

  /** Mid-band frequencies of ISO 266, and those of the series R 20 of ISO 3. */
  private static final double[] THIRDS = {
    16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250,
    1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10_000, 12_500, 16_000, 20_000, 25_000
  };

  @TempDir private Path folder;
  private final List<String> captures = new ArrayList<>(List.of("unit,fixture,side,seating,file"));

  private static double[] spaced(double fromHz, double toHz, double perOctave) {
    int steps = (int) Math.ceil(perOctave * Math.log(toHz / fromHz) / Math.log(2));
    double[] hz = new double[steps + 1];
    Arrays.setAll(hz, i -> fromHz * Math.pow(toHz / fromHz, i / (double) steps));
    return hz;
  }

  private static double[] without(double[] hz, double lowHz, double highHz) {
    return Arrays.stream(hz).filter(f -> f <= lowHz || f >= highHz).toArray();
  }

  /** A smooth curve drawn from a seed. */
  private static DoubleUnaryOperator smooth(long seed, double sizeDb) {
    Random random = new Random(seed);
    double[] phase = random.doubles(5, 0, 6).toArray();
    double[] size = random.doubles(5, -1, 1).map(d -> d * sizeDb).toArray();
    return hz -> {
      double sum = 0;
      for (int k = 0; k < 5; k++) {
        sum += size[k] * Math.sin((k + 1) * 0.8 * Math.log(hz) + phase[k]);
      }
      return sum;
    };
  }

  private static DoubleUnaryOperator unit(int unit) {
    DoubleUnaryOperator shape = smooth(100 + unit, 1);
    return hz -> 80 + shape.applyAsDouble(hz);
  }

  /** The same unit on the new fixture: what all units share, and what this one adds. */
  private static DoubleUnaryOperator onNew(int unit, double ownDb) {
    DoubleUnaryOperator shared = smooth(1, 1);
    DoubleUnaryOperator own = smooth(200 + unit, ownDb);
    return hz -> unit(unit).applyAsDouble(hz) + shared.applyAsDouble(hz) + own.applyAsDouble(hz);
  }

  private static DoubleUnaryOperator seated(DoubleUnaryOperator curve, long seed) {
    DoubleUnaryOperator scatter = smooth(seed, 0.05);
    return hz -> curve.applyAsDouble(hz) + scatter.applyAsDouble(hz);
  }

  private void curve(String file, double[] hz, DoubleUnaryOperator db) throws IOException {
    StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
    for (double f : hz) {
      text.append(String.format(Locale.ROOT, "%.6f,%.5f%n", f, db.applyAsDouble(f)));
    }
    Files.writeString(folder.resolve(file), text);
  }

  private void capture(int unit, String fixture, int seating, double[] hz, DoubleUnaryOperator db)
      throws IOException {
    String file = fixture + "-" + unit + "-" + seating + ".csv";
    curve(file, hz, db);
    captures.add("Oak " + unit + "," + fixture + ",M," + seating + "," + file);
  }

  private void study(String more) throws IOException {
    List<String> units = new ArrayList<>(List.of("unit,kind"));
    for (int u = 1; u <= UNITS; u++) {
      units.add("Oak " + u + ",over-ear open");
    }
    Files.write(folder.resolve("units.csv"), units);
    Files.write(folder.resolve("captures.csv"), captures);
    Files.writeString(
        folder.resolve("study.yaml"),
        String.join(
            "\n",
            "title: Evidence",
            "from: old",
            "to: new",
            "fixtures:",
            "  old: { label: Old, simulates_hz: [20, 20000] }",
            "  new: { label: New, simulates_hz: [20, 20000] }",
            "units: units.csv",
            "captures: captures.csv",
            more,
            ""));
  }

  /** Every unit seated twice on both fixtures, its own points on either. */
  private void sound(double[] oldHz, double[] newHz, String more) throws IOException {
    for (int u = 1; u <= UNITS; u++) {
      for (int s = 1; s <= 2; s++) {
        capture(u, "old", s, oldHz, seated(unit(u), 1000L * u + s));
        capture(u, "new", s, newHz, seated(onNew(u, 0.15), 5000L * u + s));
      }
    }
    study(more);
  }

  private Ran run(String... more) {
    List<String> arguments = new ArrayList<>(List.of("study", folder.toString()));
    arguments.addAll(List.of(more));
    return Ran.of(arguments.toArray(String[]::new));
  }

  private List<Map<String, String>> rows(String file) throws IOException {
    List<String> lines =
        Files.readAllLines(folder.resolve(file)).stream().filter(l -> !l.startsWith("#")).toList();
    String[] header = lines.get(0).split(",", -1);
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, String> row = new LinkedHashMap<>();
      for (int c = 0; c < header.length; c++) {
        row.put(header[c], cells[c]);
      }
      rows.add(row);
    }
    return rows;
  }

  private List<Map<String, String>> bands() throws IOException {
    return rows("results/transfer.csv");
  }

  private static Band band(Map<String, String> row) {
    return Band.ofMidFrequency(Double.parseDouble(row.get("band_hz")), 12);
  }

  @Test
  void aSoundStudyIsReliable() throws IOException {
    sound(DENSE, DENSE, "");
    assertEquals(0, run().status());
    assertTrue(bands().stream().allMatch(b -> b.get("mark").equals("reliable")), reasons());
  }

  private String reasons() throws IOException {
    return bands().stream()
        .map(b -> b.get("mark") + " " + b.get("reasons"))
        .distinct()
        .toList()
        .toString();
  }

  @Test
  void aHoleOnEitherFixtureHasNoMarkBetterThanNoData() throws IOException {
    sound(DENSE, without(DENSE, 1100, 7000), "");
    assertEquals(0, run().status());
    for (Map<String, String> row : bands()) {
      boolean clear = band(row).upperHz() < 1060 || band(row).lowerHz() > 7200;
      boolean inside = band(row).lowerHz() > 1100 && band(row).upperHz() < 7000;
      if (clear) {
        assertEquals("reliable", row.get("mark"), row.toString());
      } else if (inside) {
        assertEquals("unreliable", row.get("mark"), row.toString());
        assertEquals("no data", row.get("reasons"));
        assertEquals("0", row.get("units"));
      }
    }
  }

  @Test
  void capturesOfTwoPointsGiveNothing() throws IOException {
    double[] ends = {15, 22_000};
    sound(ends, ends, "anchor: none");
    Ran ran = run();
    assertEquals(0, ran.status(), ran.err());
    assertTrue(bands().stream().allMatch(b -> b.get("reasons").equals("no data")), reasons());
  }

  @Test
  void aCaptureWithAHoleAtTheAnchorIsRefused() throws IOException {
    double[] ends = {15, 22_000};
    sound(ends, DENSE, "");
    Ran ran = run();
    assertEquals(1, ran.status());
    assertTrue(
        ran.err()
            .contains(
                "old-1-1.csv: the capture has no point between 15 Hz and 22 kHz, but the anchor"
                    + " (500 Hz to 1 kHz) needs points no further apart than 1/3 octave"),
        ran.err());
  }

  @Test
  void tablesOfThirdOctavesAreNeverBetterThanCaution() throws IOException {
    sound(THIRDS, DENSE, "");
    assertEquals(0, run().status());
    for (Map<String, String> row : bands()) {
      assertEquals("caution", row.get("mark"), row.toString());
      assertEquals("coarse points", row.get("reasons"));
      assertEquals("8", row.get("units"));
    }
  }

  @Test
  void sixthsOfAnOctaveAreEnough() throws IOException {
    double[] sixths = spaced(14.9, 24_000, 6);
    sound(sixths, sixths, "bands: { per_octave: 6, from_hz: 20, to_hz: 20000 }");
    assertEquals(0, run().status());
    assertTrue(bands().stream().allMatch(b -> b.get("mark").equals("reliable")), reasons());
  }

  /** An old graph of two points, one with a hole, one of third octaves and a sound one. */
  @Test
  void oldGraphsAreHeldToTheSame() throws IOException {
    sound(
        DENSE,
        DENSE,
        "publishing: { from_hz: 100, to_hz: 10000, lost_octaves: 0.5 }\n"
            + "references: { new: { file: thirds-reference.csv } }");
    DoubleUnaryOperator shape = unit(50);
    curve("two.csv", new double[] {15, 22_000}, shape);
    curve("holed.csv", without(DENSE, 1100, 7000), shape);
    curve("thirds.csv", THIRDS, shape);
    curve("sound.csv", DENSE, shape);
    DoubleUnaryOperator reference = smooth(7, 2);
    curve("dense-reference.csv", DENSE, reference);
    curve("thirds-reference.csv", THIRDS, reference);
    curve("two-less.csv", new double[] {15, 22_000}, hz -> 60);
    curve("sound-less.csv", DENSE, hz -> shape.applyAsDouble(hz) - reference.applyAsDouble(hz));
    // The same curve in a file of its own.
    Files.writeString(
        folder.resolve("fine-less.csv"), Files.readString(folder.resolve("sound-less.csv")) + "\n");
    Files.writeString(
        folder.resolve("catalogue.csv"),
        """
        graph,unit,kind,file,seatings,form,reference,smoothing
        two,Ash 1,over-ear open,two.csv,2,raw,,none
        holed,Ash 2,over-ear open,holed.csv,2,raw,,none
        thirds,Ash 3,over-ear open,thirds.csv,2,raw,,none
        sound,Ash 4,over-ear open,sound.csv,2,raw,,none
        two-less,Ash 5,over-ear open,two-less.csv,2,compensated,dense-reference.csv,none
        sound-less,Ash 6,over-ear open,sound-less.csv,2,compensated,thirds-reference.csv,none
        fine-less,Ash 7,over-ear open,fine-less.csv,2,compensated,dense-reference.csv,none
        """);
    assertEquals(0, run().status());
    Ran ran =
        Ran.of(
            "translate",
            folder.resolve("results/translation.json").toString(),
            "--catalogue",
            folder.resolve("catalogue.csv").toString(),
            "--out",
            folder.resolve("moved").toString());
    assertEquals(0, ran.status(), ran.err());
    Map<String, String> decisions = new LinkedHashMap<>();
    rows("moved/summary.csv")
        .forEach(r -> decisions.put(r.get("graph"), r.get("decision") + ", " + r.get("reasons")));
    assertEquals(
        Map.of(
            "two", "re-measure, ",
            "holed", "re-measure, ",
            "thirds", "publish with marks, coarse points",
            "sound", "publish, ",
            "two-less", "re-measure, ",
            "sound-less", "publish with marks, coarse points",
            "fine-less", "publish with marks, coarse points"),
        decisions);
    String report = Files.readString(folder.resolve("moved/report.html"));
    assertTrue(
        report.contains(
            "has no level above 15 Hz, where points are further apart than 1/3 octave"));
    assertTrue(report.contains("the old graph has no level over too much of the range"));
    assertTrue(
        rows("moved/translated/two.csv").stream()
            .allMatch(r -> r.get("reasons").equals("no data")));
  }

  @Test
  void aReferenceIsHeldToTheSame() throws IOException {
    sound(DENSE, DENSE, "");
    assertEquals(0, run().status());
    curve("thirds.csv", THIRDS, smooth(7, 2));
    curve("two.csv", new double[] {15, 22_000}, smooth(7, 2));
    for (String file : List.of("thirds", "two")) {
      Ran ran =
          Ran.of(
              "translate",
              folder.resolve("results/translation.json").toString(),
              "--reference",
              folder.resolve(file + ".csv").toString(),
              "--kind",
              "over-ear open",
              "--out",
              folder.resolve(file).toString());
      if (file.equals("two")) {
        assertEquals(1, ran.status());
        assertTrue(ran.err().contains("two.csv: the curve covers no band of the study"), ran.err());
      } else {
        assertEquals(0, ran.status(), ran.err());
        assertEquals(
            List.of("caution coarse points"),
            rows(file + "/reference.csv").stream()
                .map(r -> r.get("mark") + " " + r.get("reasons"))
                .distinct()
                .toList());
      }
    }
  }

  @Test
  void oneCurveForEveryUnitIsOneCapture() throws IOException {
    for (int u = 1; u <= UNITS; u++) {
      capture(u, "old", 1, DENSE, unit(1));
      capture(u, "new", 1, DENSE, onNew(1, 0.15));
    }
    study("");
    Ran ran = run();
    assertEquals(0, ran.status(), ran.err());
    for (Map<String, String> row : bands()) {
      assertEquals("unreliable", row.get("mark"));
      assertEquals("few units", row.get("reasons"));
      assertEquals("1", row.get("units"));
    }
    List<Map<String, String>> found =
        rows("results/screening.csv").stream()
            .filter(r -> r.get("finding").equals("same content"))
            .toList();
    assertEquals(2 * (UNITS - 1), found.size());
    assertTrue(found.stream().allMatch(r -> r.get("excluded").equals("rule")));
    assertEquals(
        2,
        rows("results/screening.csv").stream()
            .filter(r -> r.get("finding").equals("has copies") && r.get("excluded").equals("no"))
            .count());
  }

  @Test
  void oneCurveForBothFixturesIsRefused() throws IOException {
    for (int u = 1; u <= UNITS; u++) {
      capture(u, "old", 1, DENSE, unit(u));
      int shifted = u;
      capture(u, "new", 1, DENSE, hz -> unit(shifted).applyAsDouble(hz) - 3);
    }
    study("");
    Ran ran = run();
    assertEquals(1, ran.status());
    assertTrue(
        ran.err()
            .contains(
                "study.yaml: no unit has an accepted capture on both fixtures; 8 captures are copies"
                    + " of an earlier one; mend what was refused"),
        ran.err());
  }

  /** Units that differ from each other, but all by the same between the fixtures. */
  @Test
  void aStudyWithoutScatterIsAnAlarm() throws IOException {
    for (int u = 1; u <= UNITS; u++) {
      capture(u, "old", 1, DENSE, unit(u));
      capture(u, "new", 1, DENSE, onNew(u, 0));
    }
    study("anchor: { at_hz: 1000 }");
    assertEquals(0, run().status());
    assertTrue(bands().stream().allMatch(b -> b.get("reasons").equals("no scatter")), reasons());
    assertTrue(bands().stream().allMatch(b -> b.get("mark").equals("unreliable")));
    assertFalse(
        rows("results/equivalence.csv").stream().anyMatch(r -> r.containsValue("yes")),
        "nothing is shown to be equivalent");
    curve("old-graph.csv", DENSE, unit(50));
    Files.writeString(
        folder.resolve("catalogue.csv"),
        "graph,unit,kind,file\na,Elm 1,over-ear open,old-graph.csv\n");
    assertEquals(
        0,
        Ran.of(
                "translate",
                folder.resolve("results/translation.json").toString(),
                "--catalogue",
                folder.resolve("catalogue.csv").toString(),
                "--out",
                folder.resolve("moved").toString())
            .status());
    assertEquals("re-measure", rows("moved/summary.csv").get(0).get("decision"));
  }

  /** All units agree where they are pinned: that is what an anchor is, and no alarm. */
  @Test
  void anAnchorAtOneFrequencyIsNoAlarm() throws IOException {
    sound(
        DENSE,
        DENSE,
        "anchor: { at_hz: 1000 }\nbands: { per_octave: 48, from_hz: 20, to_hz: 20000 }");
    assertEquals(0, run().status());
    assertFalse(reasons().contains("no scatter"), reasons());
  }

  @Test
  void aConfidenceNobodyCanMeanIsRefused() throws IOException {
    for (String confidence : List.of("1e-9", "0.49", "0.99995")) {
      study("confidence: " + confidence);
      Ran ran = run();
      assertEquals(1, ran.status());
      assertTrue(
          ran.err().contains("write a share from 0.5 to 0.9999, such as 0.95 for 95 %"), ran.err());
    }
  }
}
