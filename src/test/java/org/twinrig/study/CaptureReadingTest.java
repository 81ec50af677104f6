package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.capture.Capture;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

class CaptureReadingTest {
  @TempDir Path temp;
  private LabFolder lab;

  @BeforeEach
  void copy() throws IOException {
    lab = LabFolder.in(temp.resolve("lab"));
  }

  private Study study() throws UnusableInput {
    return StudyReader.read(lab.study()).value();
  }

  @Test
  void everyRowIsReadInOrderExcludedOnesToo() throws Exception {
    Study study = study();
    List<Capture> captures = CaptureReading.read(study, 2).value();
    assertEquals(study.captures(), captures.stream().map(Capture::entry).toList());
    assertEquals(121, captures.get(0).response().size());
  }

  @Test
  void theNumberOfThreadsChangesNothing() throws Exception {
    Files.writeString(lab.study().resolve("captures/b-head.csv"), "no curve\n");
    Study study = study();
    Findings<List<Capture>> one = CaptureReading.read(study, 1);
    assertEquals(one, CaptureReading.read(study, 3));
    assertEquals(one, CaptureReading.read(study, 16));
    assertThrows(IllegalArgumentException.class, () -> CaptureReading.read(study, 0));
  }

  @Test
  void aFileThatIsRefusedCostsItsRowOnlyAndNamesIt() throws Exception {
    Files.writeString(lab.study().resolve("captures/b-head.csv"), "no curve\n");
    Findings<List<Capture>> findings = CaptureReading.read(study(), 2);
    assertEquals(6, findings.value().size());
    assertEquals(1, findings.refused().size());
    Problem problem = findings.refused().get(0);
    assertEquals("captures/b-head.csv", problem.source());
    assertTrue(problem.what().endsWith(" (line 5 of the table of captures)"), problem.text());
  }

  @Test
  void oneCurveUnderTwoNamesIsNoted() throws Exception {
    Path captures = lab.study().resolve("captures");
    Files.copy(
        captures.resolve("b-head.csv"),
        captures.resolve("b-head-2.csv"),
        StandardCopyOption.REPLACE_EXISTING);
    List<Problem> problems = CaptureReading.read(study(), 2).problems();
    assertEquals(
        "captures/b-head-2.csv: has the same content as `captures/b-head.csv` (lines 6 and 5 of the"
            + " table of captures)",
        problems.get(problems.size() - 1).text());
  }

  @Test
  void theCalibratorIsMadeToReadTrue() throws Exception {
    Study study = study();
    List<Capture> read = CaptureReading.read(study, 1).value();
    List<Capture> corrected = study.corrected(read);
    double[] shiftsDb = {0.2, -0.1, 0.2, 0, 0, 0, 0};
    for (int i = 0; i < shiftsDb.length; i++) {
      double shiftDb = corrected.get(i).response().levelDb(3) - read.get(i).response().levelDb(3);
      assertEquals(shiftsDb[i], shiftDb, 1e-9);
    }
    assertEquals(read.get(3), corrected.get(3));
    Study without =
        new Study(
            study.folder(),
            study.title(),
            study.from(),
            study.to(),
            study.units(),
            study.captures(),
            List.of(),
            study.catalogue(),
            study.settings(),
            study.capturesFolder(),
            study.inputs(),
            Map.of());
    assertThrows(IllegalArgumentException.class, () -> without.corrected(read));
  }

  /** GNU coreutils 9.1: {@code sha256sum units.csv} and, of the lines, {@code sha256sum | cut}. */
  @Test
  void theFingerprintAgreesWithCoreutils() throws Exception {
    InputFingerprint print = fingerprint(lab.study());
    assertEquals(11, print.inputs().size());
    assertEquals(
        new InputFingerprint.Input(
            "units.csv", "f8bfd4e99c4a35c8a31df09943039c608cce05d8e91afc15ffbf425b981df92f"),
        print.inputs().get(10));
    assertEquals("e259dd5f8bb4", print.shortText());
    assertEquals(12, HexFormat.of().parseHex(print.shortText()).length * 2);
  }

  @Test
  void theFingerprintDoesNotDependOnThePlaceButOnEveryByte() throws Exception {
    InputFingerprint here = fingerprint(lab.study());
    LabFolder there = LabFolder.in(temp.resolve("elsewhere"));
    assertEquals(here, fingerprint(there.study()));
    there.spoil("captures/c-head.csv", "1000.00,", "1000.01,");
    assertNotEquals(here.shortText(), fingerprint(there.study()).shortText());
    lab.spoil("units.csv", "velour", "leather");
    assertNotEquals(here.shortText(), fingerprint(lab.study()).shortText());
  }

  @Test
  void aFileThatHasGoneIsSaidSo() throws Exception {
    Study study = study();
    Files.delete(lab.study().resolve("sessions.csv"));
    UnusableInput gone =
        assertThrows(UnusableInput.class, () -> InputFingerprint.of(study, List.of()));
    assertTrue(
        gone.getMessage().startsWith("study.yaml: a file of the study cannot be read any more"));
  }

  private static InputFingerprint fingerprint(Path folder) throws UnusableInput {
    Study study = StudyReader.read(folder).value();
    return InputFingerprint.of(study, CaptureReading.read(study, 2).value());
  }
}
