package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;

/** Keys and columns that say how sessions are judged, and what is said when they are wrong. */
class SessionRulesTest {
  @TempDir private Path folder;

  private static final String HEADER =
      "session,date,fixture,calibrator_nominal_db,calibrator_read_db,calibrator,pressure_kpa\n";
  private static final String EVENING = "evening,2026-03-02,head,94.0,94.1,,\n";

  private List<String> yaml(String more) throws IOException {
    return LabFolder.in(folder)
        .spoil("study.yaml", "calibrator_class: 1", "calibrator_class: 1\n" + more)
        .problems();
  }

  private LabFolder sessions(String rows) throws IOException {
    return LabFolder.in(folder).write("sessions.csv", HEADER + rows);
  }

  @Test
  void theRulesAreRead() throws Exception {
    LabFolder lab =
        LabFolder.in(folder)
            .spoil(
                "study.yaml",
                "seed: 7",
                "seed: 7\ncheck_unit: Alder 3\ndrift: correct\nmicrophone_drift_db: 0.2");
    Settings read = StudyReader.read(lab.study()).value().settings();
    assertEquals(Optional.of("Alder 3"), read.checkUnit());
    assertEquals(DriftMode.CORRECT, read.drift());
    assertEquals(0.2, read.microphoneDriftDb());
    assertEquals(Optional.empty(), Settings.defaults().checkUnit());
    assertEquals(DriftMode.REPORT, Settings.defaults().drift());
    assertEquals(0, Settings.defaults().microphoneDriftDb());
  }

  /** A row that stands twice says what it says otherwise: a fixture, a serial, or nothing. */
  @Test
  void aSessionIsHeldOnOneFixtureWithOneOfEachPart() throws IOException {
    String serials =
        HEADER.strip() + ",ear_simulator,microphone,pinna\n" + EVENING.strip() + ",E1,M1,\n";
    LabFolder lab = LabFolder.in(folder);
    String morning = "morning,2026-03-02,plate,94.0,93.8,,,E1,M1,\n";
    for (List<String> wrong :
        List.of(
            List.of(
                "morning,2026-03-02,head,94.0,93.8,,,E1,M1,",
                "session `morning` stands in line 3 already, on `plate`; a session is held on one"
                    + " fixture: give the one on `head` a name of its own"),
            List.of(
                "morning,2026-03-02,plate,94.0,93.8,,,E1,M2,",
                "session `morning` stands in line 3 already, with another `microphone`: M1 there, M2"
                    + " here; a session is held with one: give what was captured after the change a"
                    + " session of its own, or correct the serial"),
            List.of(
                "morning,2026-03-02,plate,94.0,93.8,,,E1,,P1",
                "session `morning` stands in line 3 already; keep one row for each session"))) {
      List<String> refused =
          lab.write("sessions.csv", serials + morning + wrong.get(0) + "\n").problems().stream()
              .filter(p -> p.contains("sessions.csv:4"))
              .toList();
      assertEquals(List.of("REFUSED sessions.csv:4: " + wrong.get(1)), refused);
    }
  }

  @Test
  void aRangeLikeAnEarLiesInTheUsableOne() throws IOException {
    String said =
        "NOTE study.yaml:6: `simulates_hz` reaches beyond the range the fixture is usable in; one of"
            + " the two is wrong, and bands outside the usable range are caution at best";
    LabFolder lab = LabFolder.in(folder);
    String sound = "simulates_hz: [100, 10000], usable_hz: [20, 16000]";
    assertEquals(List.of(), lab.problems());
    String low = "simulates_hz: [19, 10000], usable_hz: [20, 16000]";
    assertEquals(List.of(said), lab.spoil("study.yaml", sound, low).problems());
    String high = "simulates_hz: [100, 16001], usable_hz: [20, 16000]";
    assertEquals(List.of(said), lab.spoil("study.yaml", low, high).problems());
  }

  @Test
  void aCheckUnitMustBeKnown() throws IOException {
    assertEquals(
        List.of(
            "FATAL study.yaml: `check_unit` is `Alder 4`, which has no sound row in the table of"
                + " units; did you mean `Alder 3`?"),
        yaml("check_unit: Alder 4"));
  }

  @Test
  void aCheckUnitNeedsSessions() throws IOException {
    assertEquals(
        List.of(
            "FATAL study.yaml:10: `check_unit` is `Alder 3`; name the table of `sessions` too: the"
                + " unit is compared between sessions"),
        LabFolder.in(folder)
            .spoil("study.yaml", "sessions: sessions.csv", "check_unit: Alder 3")
            .problems());
  }

  @Test
  void driftIsCorrectedOnlyByACheckUnit() throws IOException {
    assertEquals(
        List.of(
            "FATAL study.yaml:27: `drift` is `correct`; name the `check_unit` that was captured in"
                + " every session, or write `drift: report`"),
        yaml("drift: correct"));
    assertThrows(
        IllegalArgumentException.class,
        () -> Settings.defaults().with(Setting.DRIFT, DriftMode.CORRECT));
  }

  @Test
  void aDriftIsANumberFromZeroToTwenty() throws IOException {
    assertEquals(
        List.of(
            "FATAL study.yaml:27: `microphone_drift_db` is `-0.1`; write how far the chain may have"
                + " moved, in dB from 0 to 20"),
        yaml("microphone_drift_db: -0.1"));
  }

  @Test
  void aPistonphoneWithoutPressureIsRefused() throws IOException {
    List<String> problems =
        sessions("morning,2026-03-02,plate,124.0,123.8,pistonphone,\n" + EVENING).problems();
    assertTrue(
        problems.contains(
            "REFUSED sessions.csv:2: the level of a pistonphone depends on the static pressure, and"
                + " `pressure_kpa` is empty; write the pressure at the place in kPa (not reduced to sea"
                + " level), or leave `calibrator` empty where `calibrator_nominal_db` is corrected for it"
                + " already"),
        problems.toString());
  }

  @Test
  void aPistonphoneIsCorrectedForThePressure() throws Exception {
    LabFolder lab = sessions("morning,2026-03-02,plate,124.0,122.42,pistonphone,84.5\n" + EVENING);
    assertEquals(List.of(), lab.problems());
    Session morning = StudyReader.read(lab.study()).value().sessions().get(0);
    assertEquals(Calibrator.PISTONPHONE, morning.calibrator());
    assertEquals(0.0028, morning.correctionDb(), 1e-4);
  }

  @Test
  void aReadingTooFarIsNotedWithItsLimit() throws IOException {
    List<String> problems =
        sessions("morning,2026-03-02,plate,94.0,93.74,,\n" + EVENING).problems();
    assertEquals(
        List.of(
            "NOTE sessions.csv:2: the reading of session `morning` departs from the calibrator's"
                + " level of 94.00 dB by 0.26 dB, but at most 0.25 dB is allowed; check how the"
                + " calibrator sat, its battery and the microphone, and read again; where the chain"
                + " had been set otherwise, declare `microphone_drift_db` in study.yaml"),
        problems);
  }

  /** IEC 60942:2017, Table 2, class 1: 0.25 dB; a value at the limit conforms (Table E.1). */
  @ParameterizedTest
  @CsvSource({"93.75, false", "94.25, false", "93.74, true", "94.26, true"})
  void aReadingAtTheLimitIsInOrder(String read, boolean noted) throws IOException {
    List<String> problems =
        sessions("morning,2026-03-02,plate,94.0," + read + ",,\n" + EVENING).problems();
    assertEquals(noted ? 1 : 0, problems.size(), problems.toString());
  }

  @Test
  void aFixturesOwnClassJudgesItsSessionsAndTheStudysTheOthers() throws Exception {
    LabFolder lab =
        sessions(
                """
                morning,2026-03-02,plate,94.0,93.7,,
                evening,2026-03-02,head,94.0,94.15,,
                """)
            .spoil("study.yaml", "type 4.3,", "type 4.3, calibrator_class: LS,")
            .spoil("study.yaml", "seed: 7", "seed: 7\nmicrophone_drift_db: 0.1");
    Study study = StudyReader.read(lab.study()).value();
    assertEquals(
        List.of(0.25 + 0.1, 0.1 + 0.1),
        study.sessions().stream()
            .map(s -> CalibratorCheck.of(study, s).orElseThrow().limitDb())
            .toList());
    assertEquals(List.of(), lab.problems());
    assertEquals(
        "1 on Flat-plate ear simulator, LS on Head with soft cheeks",
        Setting.CALIBRATOR_CLASS.words(study));
    lab.spoil("sessions.csv", "94.15", "94.21");
    assertEquals(1, lab.problems().size());
    // Without a class of the study, the other fixture's sessions are not judged.
    lab.spoil("study.yaml", "calibrator_class: 1", "");
    Study without = StudyReader.read(lab.study()).value();
    assertEquals(Optional.empty(), CalibratorCheck.of(without, without.sessions().get(0)));
  }

  @Test
  void aCalibratorThatFollowsThePressureMustBeCorrectedForIt() throws IOException {
    LabFolder lab =
        sessions(
                "morning,2026-03-02,plate,94.0,94.0,,\n"
                    + EVENING
                    + "late,2026-03-02,head,94,94,,\n")
            .spoil("study.yaml", "type 4.3,", "type 4.3, calibrator_class: 1/M,");
    assertEquals(
        List.of(
            "NOTE sessions.csv:3: the level of a calibrator of class `1/M`, that of `head`, follows"
                + " the static pressure, and was not corrected for it (in 2 rows, lines 3, 4); write"
                + " `pistonphone` under `calibrator` and the pressure under `pressure_kpa`, unless"
                + " `calibrator_nominal_db` is corrected already"),
        lab.problems());
    assertEquals(
        List.of(),
        lab.write(
                "sessions.csv",
                HEADER
                    + "morning,2026-03-02,plate,94.0,94.0,,\n"
                    + "evening,2026-03-02,head,94.0,94.0,pistonphone,101.325\n")
            .problems());
  }

  @Test
  void aClassOrAnUncertaintyThatIsNoneIsRefused() throws IOException {
    assertEquals(
        List.of(
            "FATAL study.yaml:6: `fixtures.plate.calibrator_class` is `1/C`; write the class of the"
                + " calibrator after IEC 60942: `1`, `2` or `LS`, each also with `/M`",
            "FATAL study.yaml:7: `fixtures.head.calibrator_uncertainty_db` is `5`; write the expanded"
                + " uncertainty (k = 2) in dB, from 0.001 to 3"),
        LabFolder.in(folder)
            .spoil("study.yaml", "IEC 60318-4,", "IEC 60318-4, calibrator_class: 1/C,")
            .spoil("study.yaml", "type 4.3,", "type 4.3, calibrator_uncertainty_db: 5,")
            .problems());
  }

  private static final String READ_TWICE =
      "session,date,fixture,calibrator_nominal_db,calibrator_adapter_db,calibrator_read_db,"
          + "calibrator_end_db,x_room\n";

  /** Nominal 94 and 0.4 dB of the adapter; read 94.2 and 94.4, mean 94.3: 0.1 dB is added. */
  @Test
  void theAdapterIsAddedToTheNominalLevelAndBothReadingsAreAveraged() throws Exception {
    LabFolder lab =
        LabFolder.in(folder)
            .write(
                "sessions.csv",
                READ_TWICE
                    + "morning,2026-03-02,plate,94.0,0.4,94.2,94.4,quiet\n"
                    + "evening,2026-03-02,head,94.0,,94.1,,\n");
    assertEquals(List.of(), lab.problems());
    Session morning = StudyReader.read(lab.study()).value().sessions().get(0);
    assertEquals(94.4, morning.calibratorTrueDb(), 1e-12);
    assertEquals(0.1, morning.correctionDb(), 1e-12);
    assertEquals(0.2, morning.readingDriftDb(), 1e-12);
    assertEquals(0.2, morning.departureDb(), 1e-12);
    assertEquals(Map.of("x_room", "quiet"), morning.setup().own());
    Session evening = StudyReader.read(lab.study()).value().sessions().get(1);
    assertEquals(94, evening.calibratorTrueDb());
    assertEquals(-0.1, evening.correctionDb(), 1e-12);
    assertEquals(0, evening.readingDriftDb());
  }

  /** The mean of both is in order; neither reading is. */
  @Test
  void eachOfTwoReadingsIsJudgedAndWhatLiesBetweenThemIsNoted() throws IOException {
    LabFolder lab =
        LabFolder.in(folder)
            .write(
                "sessions.csv",
                READ_TWICE
                    + "morning,2026-03-02,plate,94.0,,93.7,94.3,\n"
                    + "evening,2026-03-02,head,94.0,,94.1,,\n");
    assertEquals(
        List.of(
            "NOTE sessions.csv:2: the calibrator was read 0.60 dB apart at the beginning and at the"
                + " end of session `morning`: captures are corrected by the mean of both readings, and"
                + " their levels are off by up to half of it",
            "NOTE sessions.csv:2: a reading of session `morning` departs from the calibrator's level"
                + " of 94.00 dB by 0.30 dB, but at most 0.25 dB is allowed; check how the calibrator"
                + " sat, its battery and the microphone, and read again; where the chain had been set"
                + " otherwise, declare `microphone_drift_db` in study.yaml"),
        lab.problems());
  }

  @Test
  void anImplausibleReadingAtTheEndIsRefused() throws IOException {
    List<String> problems =
        LabFolder.in(folder)
            .write(
                "sessions.csv",
                READ_TWICE
                    + "morning,2026-03-02,plate,94.0,,94.0,106.0,\n"
                    + "evening,2026-03-02,head,94.0,30,94.1,,\n")
            .problems();
    assertTrue(
        problems.contains(
            "REFUSED sessions.csv:2: `calibrator_end_db` is `106.0`, 12.0 dB from the 94.0 dB that"
                + " the calibrator gave; more than 10 dB is taken for a slip: correct the reading or"
                + " the nominal level; if the chain was really that far off, declare"
                + " `microphone_drift_db` in study.yaml"),
        problems.toString());
    assertTrue(
        problems.contains(
            "REFUSED sessions.csv:3: `calibrator_adapter_db` is `30`; write a number from -20 to 20"),
        problems.toString());
  }

  @Test
  void aDriveWithoutTheImpedanceIsNoted() throws IOException {
    LabFolder lab =
        LabFolder.in(folder)
            .write(
                "sessions.csv",
                """
                session,date,fixture,calibrator_nominal_db,calibrator_read_db,drive_v
                morning,2026-03-02,plate,94.0,94.0,0.5
                evening,2026-03-02,head,94.0,94.0,0.5
                """);
    assertEquals(
        List.of(
            "NOTE units.csv: sensitivity at 1 mW is not known for 3 units, because their"
                + " `impedance_ohm` is empty; add it, or leave it so: at 1 V sensitivity is known"
                + " from `drive_v` of the sessions"),
        lab.problems());
    lab.write(
        "units.csv",
        """
        unit,kind,role,impedance_ohm
        Alder 3,open over-ear,,32
        "Birch, long cable",open over-ear,holdout,300
        Cedar 7,in-ear,fit,
        """);
    assertTrue(
        lab.problems()
            .get(0)
            .startsWith(
                "NOTE units.csv: sensitivity at 1 mW is not known for 1 unit, because its"
                    + " `impedance_ohm` is empty;"),
        lab.problems().toString());
    assertEquals(List.of(), lab.spoil("units.csv", "fit,", "fit,16").problems());
  }

  /** A lost digit would move every level of the session by 85 dB. */
  @Test
  void anImplausibleReadingLeavesItsSessionOutAndTheRestGoesOn() throws Exception {
    LabFolder lab = sessions("morning,2026-03-02,plate,94.0,9.4,,\n" + EVENING);
    assertEquals(
        List.of(
            "NOTE units.csv:3: unit `Alder 3` has no usable capture on `plate` and takes no part",
            "NOTE units.csv:4: unit `Birch, long cable` has no usable capture on `plate` and takes"
                + " no part",
            "REFUSED sessions.csv:2: `calibrator_read_db` is `9.4`, 84.6 dB from the 94.0 dB that the"
                + " calibrator gave; more than 10 dB is taken for a slip: correct the reading or the"
                + " nominal level; if the chain was really that far off, declare"
                + " `microphone_drift_db` in study.yaml",
            "REFUSED captures.csv:2: session `morning` was left out of sessions.csv (in 2 rows,"
                + " lines 2, 4); mend its row there first"),
        lab.problems());
    assertEquals(
        List.of("evening"),
        StudyReader.read(lab.study()).value().sessions().stream().map(Session::name).toList());
  }

  @Test
  void aReadingUpToTenDecibelsOffIsUsedAndMoreWhereItIsDeclared() throws IOException {
    LabFolder lab = sessions("morning,2026-03-02,plate,94.0,84.0,,\n" + EVENING);
    assertFalse(refused(lab));
    assertTrue(refused(lab.spoil("sessions.csv", "84.0", "83.9")));
    assertFalse(refused(lab.spoil("study.yaml", "seed: 7", "seed: 7\nmicrophone_drift_db: 12")));
  }

  private static boolean refused(LabFolder lab) {
    return lab.problems().stream().anyMatch(p -> p.startsWith("REFUSED sessions.csv:2: "));
  }

  @Test
  void aDateThatIsNotUnderstoodIsNotedAndItsSessionUsed() throws Exception {
    LabFolder lab = sessions("morning,2.3.26,plate,94.0,94.0,,\n" + EVENING);
    assertEquals(
        List.of(
            "NOTE sessions.csv:2: `date` is `2.3.26`, which is no day written as year-month-day:"
                + " the session is used, and the drift charts of `plate` follow the order of the rows;"
                + " write the day like 2026-03-02"),
        lab.problems());
    assertEquals(2, StudyReader.read(lab.study()).value().sessions().size());
  }

  @ParameterizedTest
  @CsvSource({
    "3.5.2026, 2026-05-03",
    "03.05.2026, 2026-05-03",
    "25/5/2026, 2026-05-25",
    "5/25/2026, 2026-05-25",
    "25-05-2026, 2026-05-25",
    "2026-5-3, 2026-05-03",
    "2026/05/03, 2026-05-03",
    "3/5/2026, the day like 2026-03-02",
    "3-5-2026, the day like 2026-03-02",
    "31.2.2026, the day like 2026-03-02",
    "3.5.26, the day like 2026-03-02",
    "3 May 2026, the day like 2026-03-02"
  })
  void aDateThatCanMeanOneDayOnlyIsShownAsItIsWritten(String written, String shown)
      throws IOException {
    List<String> problems =
        sessions("morning," + written + ",plate,94.0,94.0,,\n" + EVENING).problems();
    assertEquals(1, problems.size(), problems.toString());
    assertTrue(
        problems
            .get(0)
            .startsWith("NOTE sessions.csv:2: `date` is `" + written + "`, which is no day"),
        problems.toString());
    assertTrue(problems.get(0).endsWith(" order of the rows; write " + shown), problems.toString());
  }

  @Test
  void aSessionThatIsNotInTheTableCostsItsCapturesOnly() throws Exception {
    LabFolder lab = sessions("dawn,2026-03-02,plate,94.0,94.0,,\n" + EVENING);
    assertEquals(
        List.of(
            "REFUSED captures.csv:2: there is no session `morning` in sessions.csv (in 2 rows, lines"
                + " 2, 4); add it there, or correct the name"),
        lab.problems().stream().filter(p -> p.startsWith("REFUSED")).toList());
    assertEquals(2, StudyReader.read(lab.study()).value().sessions().size());
  }

  private Unit.Role role(LabFolder lab) throws Exception {
    return StudyReader.read(lab.study()).value().units().stream()
        .filter(u -> u.name().equals("Alder 3"))
        .findFirst()
        .orElseThrow()
        .role();
  }

  @Test
  void aCheckUnitEntersTheFitOnlyWhereItsRoleIsWritten() throws Exception {
    LabFolder lab = LabFolder.in(folder);
    assertEquals(Unit.Role.FIT, role(lab));
    lab.spoil("study.yaml", "seed: 7", "seed: 7\ncheck_unit: Alder 3");
    assertEquals(Unit.Role.CHECK, role(lab));
    assertEquals(List.of(), lab.problems());
    lab.spoil("units.csv", "Alder 3,open over-ear,", "Alder 3,open over-ear,fit");
    assertEquals(Unit.Role.FIT, role(lab));
    assertEquals(List.of(), lab.problems());
    lab.spoil("study.yaml", "seed: 7", "seed: 7\ndrift: correct");
    assertEquals(
        List.of(
            "NOTE units.csv:3: the check unit `Alder 3` is used as another unit too, and sessions are"
                + " corrected by it: its own seatings then scatter less than they did; give it the"
                + " role `check`, so that it does not make the seating scatter of its kind too small"),
        lab.problems());
  }

  @Test
  void aRoleWithoutACheckUnitIsNoted() throws Exception {
    LabFolder lab =
        LabFolder.in(folder)
            .spoil("units.csv", "Alder 3,open over-ear,", "Alder 3,open over-ear,check");
    assertEquals(Unit.Role.CHECK, role(lab));
    assertEquals(
        List.of(
            "NOTE units.csv:3: unit `Alder 3` has the role `check` and takes no part in the transfer;"
                + " name it as `check_unit` in study.yaml, so that its drift is looked at"),
        lab.problems());
  }
}
