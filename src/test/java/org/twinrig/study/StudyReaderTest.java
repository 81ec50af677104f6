package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.spectrum.ImpulseWindow;

class StudyReaderTest {
  private static final String LEAST =
      """
      title: Least
      from: plate
      to: head
      fixtures:
        plate: { label: Plate, simulates_hz: [100, 10000], usable_hz: [20, 16000] }
        head: { label: Head, simulates_hz: [20, 20000] }
      units: units.csv
      captures: captures.csv
      sessions: sessions.csv
      """;

  @TempDir Path temp;
  private LabFolder lab;

  @BeforeEach
  void copy() throws IOException {
    lab = LabFolder.in(temp.resolve("lab"));
  }

  @Test
  void everyKeyIsRead() throws Exception {
    Findings<Study> findings = StudyReader.read(lab.study());
    assertEquals(List.of(), findings.problems());
    Study study = findings.value();
    assertEquals("Plate to head", study.title());
    assertEquals(
        new Fixture(
            "plate",
            "Flat-plate ear simulator",
            "IEC 60318-4",
            Optional.of(new FrequencyRange(100, 10_000)),
            Optional.of(new FrequencyRange(20, 16_000)),
            "",
            Optional.empty()),
        study.from());
    assertEquals(
        new Fixture(
            "head",
            "Head with soft cheeks",
            "ITU-T P.57 type 4.3",
            Optional.of(new FrequencyRange(20, 20_000)),
            Optional.empty(),
            "",
            Optional.empty()),
        study.to());
    assertEquals(
        Settings.defaults()
            .with(Setting.BANDS, new Bands(6, 50, 16_000))
            .with(Setting.ANCHOR, new Anchor.Frequency(1000))
            .with(Setting.CONFIDENCE, 0.9)
            .with(
                Setting.TOLERANCE,
                new Tolerance(
                    new DbLimit(List.of(new DbLimit.Step(20, 1), new DbLimit.Step(4000, 2))),
                    DbLimit.everywhere(4),
                    0.4))
            .with(Setting.MIN_UNITS, 4)
            .with(
                Setting.ZONES,
                List.of(new DeclaredZone("canal entrance resonance", "plate", 8000, 10_000)))
            .with(Setting.RESONANCE_SEARCH_HZ, Map.of("default", new FrequencyRange(4000, 11_000)))
            .with(Setting.SCREENING, ScreeningMode.EXCLUDE)
            .with(Setting.MODEL, PredictionModel.OFFSET)
            .with(Setting.SEED, 7L)
            .with(Setting.CALIBRATOR_CLASS, Optional.of(CalibratorClass.CLASS_1))
            .with(Setting.IMPULSE, new ImpulseWindow(1, 150, 5))
            .with(Setting.CAPTURE_SMOOTHING, new Smoothing(24))
            .with(Setting.PUBLISHING, new PublishingRule(new FrequencyRange(200, 8000), 0.5)),
        study.settings());
  }

  @Test
  void everyRowIsRead() throws Exception {
    Study study = StudyReader.read(lab.study()).value();
    assertEquals(
        List.of(
            new Unit("Alder 3", "open over-ear", Unit.Role.FIT, "velour", "", 3),
            new Unit(
                "Birch, long cable",
                "open over-ear",
                Unit.Role.HOLDOUT,
                "",
                "says \"12\" on the box",
                4),
            new Unit("Cedar 7", "in-ear", Unit.Role.FIT, "", "", 6)),
        study.units());
    assertEquals(
        new Session(
            "morning",
            "2026-03-02",
            "plate",
            94.0,
            93.8,
            Calibrator.LEVEL_CONTROLLED,
            OptionalDouble.of(101.2),
            OptionalDouble.of(21.5),
            "J",
            "",
            2),
        study.sessions().get(0));
    assertEquals(7, study.captures().size());
    assertEquals(
        new CaptureEntry(
            "Birch, long cable",
            "head",
            Side.M,
            2,
            "captures/b-head-2.csv",
            "",
            "cable touched the cheek",
            "",
            "",
            6),
        study.captures().get(4));
  }

  @Test
  void filesAreFound() throws Exception {
    Study study = StudyReader.read(lab.study()).value();
    Path real = lab.study().toRealPath();
    assertEquals(lab.study(), study.folder());
    assertEquals(real, study.capturesFolder());
    assertEquals(
        Optional.of(lab.root().toRealPath().resolve("catalogue/catalogue.csv")), study.catalogue());
    assertEquals(
        List.of("study.yaml", "units.csv", "captures.csv", "sessions.csv"),
        study.inputs().stream()
            .map(input -> real.relativize(input).toString())
            .collect(Collectors.toList()));
  }

  @Test
  void theYamlFileItselfMayBeNamed() throws Exception {
    Files.move(lab.study().resolve("study.yaml"), lab.study().resolve("strict.yaml"));
    Study study = StudyReader.read(lab.study().resolve("strict.yaml")).value();
    assertEquals(lab.study().toAbsolutePath(), study.folder());
    assertEquals("strict.yaml", study.inputs().get(0).getFileName().toString());
  }

  @Test
  void whatIsLeftOutHasTheDocumentedDefault() throws Exception {
    lab.write("study.yaml", LEAST);
    assertEquals(Settings.defaults(), StudyReader.read(lab.study()).value().settings());
    lab.write(
        "study.yaml",
        LEAST
            + """
            bands: { per_octave: 12, from_hz: 20, to_hz: 20000 }
            anchor: { from_hz: 500, to_hz: 1000 }
            confidence: 0.95
            tolerance: { reliable_db: 1.5, caution_db: 3.0, equivalence_db: 0.5 }
            min_units: 5
            zones: []
            resonance_search_hz: { in-ear: [4000, 15000], default: [5000, 12000] }
            screening: { apply: suggest }
            model: average
            seed: 1
            """);
    assertEquals(Settings.defaults(), StudyReader.read(lab.study()).value().settings());
  }

  /** Studies written before there were two ranges have one, and go on as they were. */
  @Test
  void aSpecifiedRangeIsTakenForTheUsableOneAndNoted() throws Exception {
    String yaml =
        LEAST.replace(
            "simulates_hz: [100, 10000], usable_hz: [20, 16000]", "specified_hz: [100, 10000]");
    lab.write("study.yaml", yaml);
    Findings<Study> findings = StudyReader.read(lab.study());
    assertEquals(new Fixture("plate", "Plate", "", 100, 10_000), findings.value().from());
    assertEquals(
        List.of(
            Problem.note(
                "study.yaml",
                5,
                "`specified_hz` is taken for `usable_hz`: where a fixture can be used at all")),
        findings.problems());
  }

  @Test
  void partsOfAGroupMayBeLeftOut() throws Exception {
    lab.write("study.yaml", LEAST + "bands: { to_hz: 10000 }\ntolerance: {}\nanchor: none\n");
    assertEquals(
        Settings.defaults()
            .with(Setting.BANDS, new Bands(12, 20, 10_000))
            .with(Setting.ANCHOR, new Anchor.None()),
        StudyReader.read(lab.study()).value().settings());
  }

  @Test
  void aStudyThatIsNotThereIsSaidSo() {
    assertEquals(
        "nowhere/at/all: there is no such folder or file; name the folder of a study, or its yaml"
            + " file",
        assertThrows(UnusableInput.class, () -> StudyReader.read(Path.of("nowhere/at/all")))
            .getMessage());
    Path folder = lab.root().resolve("catalogue");
    assertEquals(
        folder + ": holds no study.yaml; name the folder of a study, or its yaml file",
        assertThrows(UnusableInput.class, () -> StudyReader.read(folder)).getMessage());
  }

  @Test
  void outsideAStudiesFolderTheDataRootIsTheStudyItself() throws Exception {
    Path alone = Files.move(lab.study(), lab.root().resolve("alone"));
    assertEquals(
        "study.yaml:11: `catalogue`: `../../catalogue/catalogue.csv` leaves the data root; name a"
            + " file inside it, or widen `data_root` in study.yaml",
        assertThrows(UnusableInput.class, () -> StudyReader.read(alone)).getMessage());
  }

  @Test
  void aDeclaredDataRootMayBeTheFolderAroundTheStudy() throws Exception {
    Path alone = movedTo("alone", "../");
    append(alone, "data_root: ..\n");
    assertEquals(catalogue(), StudyReader.read(alone).value().catalogue());
  }

  @Test
  void aWiderDataRootIsToBeConfirmedFromOutside() throws Exception {
    Path alone = movedTo("a/b/c", "../../../");
    append(alone, "data_root: ../../..\n");
    String refused =
        "study.yaml:30: `data_root` is `../../..`, which is more than the folder around the study,"
            + " and is not confirmed; if the study may read files from there, confirm the folder"
            + " with --data-root, or move the files closer";
    assertEquals(refused, message(alone));
    assertEquals(refused, message(alone, lab.root().resolve("a")));
    assertEquals(catalogue(), StudyReader.read(alone, List.of(lab.root())).value().catalogue());
    assertEquals(
        catalogue(),
        StudyReader.read(alone, List.of(lab.root().resolve("a"), temp)).value().catalogue());
  }

  @Test
  void aConfirmedDataRootHoldsWhereStudyYamlNamesNone() throws Exception {
    Path alone = movedTo("a/b/c", "../../../");
    assertEquals(
        catalogue(), StudyReader.read(alone, List.of(temp, lab.root())).value().catalogue());
    assertEquals(
        "study.yaml:11: `catalogue`: `../../../catalogue/catalogue.csv` leaves the data root; name"
            + " a file inside it, or widen `data_root` in study.yaml",
        message(alone, lab.root().resolve("a")));
    Path gone = temp.resolve("gone");
    assertEquals(
        gone + ": there is no such folder; give --data-root a folder that is there",
        message(alone, gone));
  }

  @Test
  void everythingAndAHomeAreToBeConfirmedHoweverCloseTheyAre() throws Exception {
    String home = System.getProperty("user.home");
    System.setProperty("user.home", lab.root().toRealPath().toString());
    try {
      Path alone = movedTo("alone", "../");
      append(alone, "data_root: ..\n");
      assertTrue(message(alone).contains("is not confirmed"), () -> message(alone));
      assertEquals(catalogue(), StudyReader.read(alone, List.of(lab.root())).value().catalogue());
      Path below = Files.move(alone, lab.root().resolve("studies/below"));
      append(below, "data_root: ../..\n");
      assertTrue(message(below).contains("is not confirmed"), () -> message(below));
      append(below, "");
      assertTrue(message(below).contains("leaves the data root"), () -> message(below));
    } finally {
      System.setProperty("user.home", home);
    }
  }

  /** The first line of a file elsewhere would stand in the message. */
  @Test
  void aStudyYamlThatIsALinkElsewhereIsNotRead() throws Exception {
    Path secret = Files.writeString(temp.resolve("secret"), "key: open sesame\n");
    Path yaml = lab.study().resolve("study.yaml");
    link(yaml, secret);
    assertEquals(
        yaml
            + ": is a link that leads away from the study; put the file itself in the place of the"
            + " link",
        message(lab.study()));
    assertTrue(message(lab.study(), temp).contains("unknown key"));
  }

  /** What lies beside a file that is not there is no guess where it is not the study's. */
  @Test
  void namesOfFilesElsewhereAreNotTold() throws Exception {
    Path outside = Files.createDirectories(temp.resolve("outside"));
    Files.writeString(outside.resolve("secret-1.csv"), "1,2\n");
    link(lab.study().resolve("more"), outside);
    lab.spoil("captures.csv", "captures/c-plate.csv", "more/secret-2.csv");
    assertEquals(
        "REFUSED captures.csv:7: `more/secret-2.csv` is a link that leads out of the data root;"
            + " copy the file into the data root, or widen `data_root` in study.yaml",
        lab.problems().get(1));
  }

  private Path movedTo(String name, String up) throws Exception {
    Path moved = lab.root().resolve(name);
    Files.createDirectories(moved.resolveSibling(""));
    Files.move(lab.study(), moved);
    Path yaml = moved.resolve("study.yaml");
    Files.writeString(yaml, Files.readString(yaml).replace("../../catalogue", up + "catalogue"));
    return moved;
  }

  private static void append(Path study, String line) throws Exception {
    Path yaml = study.resolve("study.yaml");
    String text = Files.readString(yaml).replaceAll("data_root: [./]+\n", "");
    Files.writeString(yaml, text + line);
  }

  private Optional<Path> catalogue() throws Exception {
    return Optional.of(lab.root().toRealPath().resolve("catalogue/catalogue.csv"));
  }

  private static String message(Path study, Path... dataRoots) {
    return assertThrows(UnusableInput.class, () -> StudyReader.read(study, List.of(dataRoots)))
        .getMessage();
  }

  @Test
  void linksThatLeadOutOfTheDataRootAreRefused() throws Exception {
    Path secret = Files.writeString(temp.resolve("secret.csv"), "unit,kind\nAlder 3,in-ear\n");
    link(lab.study().resolve("captures/c-plate.csv"), secret);
    assertEquals(
        List.of(
            "NOTE units.csv:6: unit `Cedar 7` has no usable capture on `plate` and takes no part",
            "REFUSED captures.csv:7: `captures/c-plate.csv` is a link that leads out of the data"
                + " root; copy the file into the data root, or widen `data_root` in study.yaml"),
        lab.problems());
    link(lab.study().resolve("units.csv"), secret);
    assertEquals(
        List.of(
            "FATAL study.yaml:8: `units`: `units.csv` is a link that leads out of the data root;"
                + " copy the file into the data root, or widen `data_root` in study.yaml"),
        lab.problems());
  }

  @Test
  void aLinkedFolderThatLeadsOutIsRefusedToo() throws Exception {
    Path outside = Files.createDirectories(temp.resolve("outside"));
    Files.writeString(outside.resolve("c.csv"), "1,2\n");
    link(lab.study().resolve("more"), outside);
    lab.spoil("captures.csv", "captures/c-plate.csv", "more/c.csv");
    assertEquals(
        "REFUSED captures.csv:7: `more/c.csv` is a link that leads out of the data root; copy the"
            + " file into the data root, or widen `data_root` in study.yaml",
        lab.problems().get(1));
  }

  @Test
  void linksInsideTheDataRootAreFollowed() throws Exception {
    Path inside = Files.move(lab.study().resolve("units.csv"), lab.root().resolve("all-units.csv"));
    link(lab.study().resolve("units.csv"), inside);
    assertEquals(List.of(), lab.problems());
  }

  /** A guess that another row names already would be wrong. */
  @Test
  void aFileAnotherRowNamesIsNoGuess() throws Exception {
    lab.spoil("captures.csv", "captures/c-plate.csv", "captures/b-plate-3.csv");
    assertEquals(
        "REFUSED captures.csv:7: there is no file `captures/b-plate-3.csv`; did you mean"
            + " `captures/c-plate.csv`? names are relative to the folder of the file that names"
            + " them",
        lab.problems().get(1));
    Files.delete(lab.study().resolve("captures/c-plate.csv"));
    assertEquals(
        "REFUSED captures.csv:7: there is no file `captures/b-plate-3.csv`; names are relative to"
            + " the folder of the file that names them",
        lab.problems().get(1));
  }

  private static void link(Path link, Path target) throws IOException {
    Files.deleteIfExists(link);
    try {
      Files.createSymbolicLink(link, target);
    } catch (UnsupportedOperationException e) {
      assumeTrue(false, "this file system has no links");
    }
  }
}
