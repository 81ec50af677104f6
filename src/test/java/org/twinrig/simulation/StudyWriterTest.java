package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.capture.Capture;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

class StudyWriterTest {
  private static final SimulationPlan PLAN =
      SimulationPlan.demo()
          .withKinds(SimulatedKind.IN_EAR)
          .withUnitsPerKind(10)
          .withSeatings(2)
          .withAxis(new SimulationPlan.Axis(70, 10, 22_000))
          .withCatalogueGraphs(7);

  @TempDir static Path shared;
  private static SimulatedStudy study;
  private static Path written;

  @TempDir Path temp;

  @BeforeAll
  static void write() throws Exception {
    study = PLAN.draw();
    written = shared.resolve("made/study");
    study.writeTo(written);
  }

  @Test
  void aStudyIsWrittenWhole() throws Exception {
    Path target = written;
    for (Capture capture : study.captures()) {
      assertTrue(Files.exists(target.resolve(capture.entry().file())));
    }
    assertEquals(
        "unit,fixture,side,seating,file,session,exclude,note", first(target, "captures.csv"));
    assertEquals("unit,kind,role,note", first(target, "units.csv"));
    assertEquals(
        "session,date,fixture,calibrator_nominal_db,calibrator_read_db,pressure_kpa,"
            + "temperature_c,operator,note",
        first(target, "sessions.csv"));
    assertEquals(
        "graph,unit,kind,file,seatings,form,reference,smoothing", first(target, "catalogue.csv"));
    assertEquals(
        "kind,band_hz,lower_hz,upper_hz,true_db", first(target, "truth/mean-transfer.csv"));
    assertEquals("unit,kind,band_hz,true_db", first(target, "truth/unit-transfer.csv"));
    assertEquals("graph,band_hz,true_to_db", first(target, "truth/catalogue.csv"));
    assertEquals(
        "unit,fixture,side,seating,trouble,excluded_by_lab", first(target, "truth/troubles.csv"));
    try (Stream<Path> beside = Files.list(target.getParent())) {
      assertEquals(List.of(target), beside.toList());
    }
  }

  /** A name and a kind are two cells, not one that holds a comma. */
  @Test
  void everyRowOfATableHasTheCellsOfItsHeader() throws Exception {
    int rows = 0;
    for (Map.Entry<String, byte[]> file : contents(written).entrySet()) {
      if (file.getKey().matches("(truth/)?[a-z-]+\\.csv")) {
        List<String> lines =
            new String(file.getValue(), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.startsWith("#"))
                .toList();
        for (String line : lines) {
          assertEquals(cells(lines.get(0)), cells(line), file.getKey() + ": " + line);
          rows++;
        }
      }
    }
    assertTrue(rows > 100, "tables were looked at: " + rows);
  }

  private static long cells(String line) {
    return 1 + line.replaceAll("\"[^\"]*\"", "").chars().filter(c -> c == ',').count();
  }

  @Test
  void theSamePlanGivesTheSameBytes() throws Exception {
    PLAN.draw().writeTo(temp.resolve("again"));
    Map<String, byte[]> one = contents(written);
    Map<String, byte[]> two = contents(temp.resolve("again"));
    assertEquals(one.keySet(), two.keySet());
    one.forEach((name, bytes) -> assertArrayEquals(bytes, two.get(name), name));
  }

  @Test
  void aFolderInUseIsLeftAlone() throws Exception {
    Path target = Files.createDirectory(temp.resolve("kept"));
    Files.writeString(target.resolve("mine.txt"), "mine");
    UnusableInput refused = assertThrows(UnusableInput.class, () -> PLAN.draw().writeTo(target));
    assertEquals(
        target + ": is not empty; name a folder that does not exist yet, or an empty one",
        refused.getMessage());
    assertEquals(List.of("mine.txt"), List.copyOf(contents(target).keySet()));
    Path file = Files.writeString(temp.resolve("file"), "");
    assertEquals(
        file + ": is a file; name a folder that does not exist yet, or an empty one",
        assertThrows(UnusableInput.class, () -> PLAN.draw().writeTo(file)).getMessage());
  }

  @Test
  void anEmptyFolderMayBeUsed() throws Exception {
    Path target = Files.createDirectory(temp.resolve("empty"));
    PLAN.withCatalogueGraphs(0).draw().writeTo(target);
    assertTrue(Files.exists(target.resolve("study.yaml")));
    assertFalse(Files.exists(target.resolve("catalogue.csv")));
  }

  @Test
  void theStudyFileSaysWhereTheDataAre() {
    assertEquals(
        """
        # A simulated study: its truth is known and stands in ../data/truth/.
        title: Plate to head
        from: plate
        to: head
        fixtures:
          plate: { label: Flat-plate ear simulator, ear_simulator: IEC 60318-4, simulates_hz: [100, 10000], usable_hz: [20, 16000] }
          head: { label: Head with soft cheeks, ear_simulator: ITU-T P.57 type 4.3, simulates_hz: [20, 20000] }
        units: ../data/units.csv
        captures: ../data/captures.csv
        sessions: ../data/sessions.csv
        catalogue: ../data/catalogue.csv
        zones:
          - { name: canal entrance resonance, fixture: plate, from_hz: 8000, to_hz: 10000 }
        screening: { apply: exclude }
        seed: 1
        """,
        PLAN.draw().studyFile("../data/"));
  }

  /** Every format holds exactly the numbers of the capture. */
  @TestFactory
  List<DynamicTest> noFormatLosesADigit() {
    Capture capture = PLAN.draw().captures().get(0);
    double[] phases = new double[capture.response().size()];
    List<DynamicTest> tests = new ArrayList<>();
    for (CaptureFormat format : CaptureFormat.ALL) {
      tests.add(
          DynamicTest.dynamicTest(
              format.head(),
              () -> {
                byte[] bytes =
                    CaptureFormat.file(
                        new SimulatedCapture(capture, phases, Optional.empty(), format));
                assertEquals(capture.response(), read(bytes, format));
              }));
    }
    return tests;
  }

  private static Response read(byte[] bytes, CaptureFormat format) {
    String text = new String(bytes, format.charset());
    assertEquals(format.byteOrderMark(), text.startsWith("\uFEFF"));
    List<String> lines =
        List.of(text.split(format.lineEnd(), -1)).stream()
            .skip(format.head().lines().count())
            .filter(line -> !line.isEmpty())
            .toList();
    double[] hz = new double[lines.size()];
    double[] db = new double[lines.size()];
    for (int i = 0; i < hz.length; i++) {
      String[] cells = lines.get(i).split(format.separator(), -1);
      hz[i] = number(cells[format.columns().indexOf(CaptureFormat.Column.HZ)], format);
      db[i] = number(cells[format.columns().indexOf(CaptureFormat.Column.DB)], format);
    }
    return Response.copyOf(hz, db);
  }

  private static double number(String cell, CaptureFormat format) {
    return Double.parseDouble(cell.replace(format.decimal(), '.'));
  }

  private static String first(Path folder, String file) throws IOException {
    try (Stream<String> lines = Files.lines(folder.resolve(file), StandardCharsets.UTF_8)) {
      return lines.filter(line -> !line.startsWith("#")).findFirst().orElseThrow();
    }
  }

  private static Map<String, byte[]> contents(Path folder) throws IOException {
    Map<String, byte[]> contents = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        contents.put(folder.relativize(file).toString(), Files.readAllBytes(file));
      }
    }
    return contents;
  }
}
