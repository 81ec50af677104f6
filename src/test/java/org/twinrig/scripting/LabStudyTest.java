package org.twinrig.scripting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.Dense;
import org.twinrig.PlannedStudy;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.Translator;

/** What scripts get is what the program itself works with. */
class LabStudyTest {
  private static final SimulationPlan PLAN =
      PlannedStudy.heldOut(
          SimulationPlan.standard()
              .withKinds(SimulatedKind.IN_EAR)
              .withUnitsPerKind(5)
              .withSeatings(2)
              .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
              .withSeed(3),
          1);

  private static StudyResult result;

  @TempDir Path folder;

  @BeforeAll
  static void analyseOnce() throws UnusableInput {
    result = SimulatedLab.of(PLAN).study().analyse();
  }

  @Test
  void numbersAreThoseOfTheAnalysisOnAnyNumberOfThreads() throws UnusableInput {
    SimulatedStudy drawn = PLAN.draw();
    StudyOutcome outcome =
        Analysis.of(drawn.declared(Settings.defaults()), drawn.captures(), result.fingerprint(), 1);
    KindOutcome kind = outcome.kinds().get(0);

    List<TransferBand> bands = result.kind("in-ear").bands();

    assertEquals(outcome.translation(), result.translation().translation());
    assertEquals(kind.transfer().bands().stream().map(TransferBand::of).toList(), bands);
    BandOutcome.Fitted fitted = (BandOutcome.Fitted) kind.estimate().bands().get(60);
    TransferBand.Estimate estimate = bands.get(60).estimate().orElseThrow();
    assertEquals(fitted.mean().meanDb(), estimate.meanDb());
    assertEquals(fitted.mean().halfWidthDb(), estimate.meanHalfDb());
    assertEquals(fitted.simultaneousHalfDb(), estimate.simultaneousHalfDb());
    assertEquals(fitted.prediction().halfDb(), estimate.predictionHalfDb());
    assertEquals(kind.zones(), result.kind("in-ear").zones());
    assertEquals(
        bands, SimulatedLab.of(PLAN).study().withThreads(3).analyse().kind("in-ear").bands());
  }

  @Test
  void aStudyInFilesIsReadThroughTheSameDoors() throws Exception {
    Path written = folder.resolve("study");
    PLAN.draw().writeTo(written);
    Study study = StudyReader.read(written).value();
    List<Capture> captures = CaptureReading.read(study, 1).value();
    String fingerprint = InputFingerprint.of(study, captures).shortText();
    StudyOutcome outcome = Analysis.of(study, captures, fingerprint, 1);

    LabStudy read = LabStudy.read(written);

    assertEquals(List.of(), read.problems());
    assertEquals(fingerprint, read.fingerprint());
    assertEquals(outcome.translation(), read.analyse().translation().translation());
  }

  @Test
  void whatCannotBeReadIsCollected() throws Exception {
    Path written = folder.resolve("study");
    PLAN.draw().writeTo(written);
    String file = LabStudy.read(written).declared().captures().get(0).file();
    Files.writeString(written.resolve(file), "not a capture\n");

    LabStudy read = LabStudy.read(written);

    assertEquals(1, read.problems().size());
    assertTrue(read.problems().get(0).text().startsWith(file + ":"), read.problems()::toString);
    assertTrue(read.analyse().problems().containsAll(read.problems()));
  }

  @Test
  void withoutAnyCaptureTheReasonsAreThrown() throws IOException, UnusableInput {
    Path written = folder.resolve("study");
    PLAN.draw().writeTo(written);
    int captures = LabStudy.read(written).declared().captures().size();
    try (var files = Files.walk(written.resolve("captures"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.writeString(file, "not a capture\n");
      }
    }

    UnusableInput thrown = assertThrows(UnusableInput.class, () -> LabStudy.read(written));

    assertEquals(captures, thrown.problems().stream().filter(p -> !p.remedy().isBlank()).count());
    assertThrows(UnusableInput.class, () -> LabStudy.read(folder.resolve("nowhere")));
  }

  @Test
  void anotherSettingShowsInTheFingerprint() throws UnusableInput {
    LabStudy study = SimulatedLab.of(PLAN).study();

    LabStudy changed = study.with(s -> s.with(Setting.MODEL, PredictionModel.OFFSET));

    assertEquals(study.fingerprint() + " with other settings", changed.fingerprint());
    assertEquals(PredictionModel.OFFSET, changed.declared().settings().get(Setting.MODEL));
    assertSame(study, study.with(s -> s));
    assertEquals("plate", study.reversed().declared().to().name());
    assertThrows(IllegalArgumentException.class, () -> study.withThreads(0));
  }

  @Test
  void mistakesOfTheCallerAreAnsweredWithWhatWouldBeRight() {
    Response flat = Dense.curve(new double[] {10, 22_000}, new double[] {90, 90});

    assertEquals(
        "there is no kind `in ear`; it must be one of in-ear",
        assertThrows(IllegalArgumentException.class, () -> result.kind("in ear")).getMessage());
    assertEquals(
        "there is no kind `in ear`; it must be one of in-ear, unknown",
        assertThrows(
                IllegalArgumentException.class, () -> result.translation().apply(flat, "in ear"))
            .getMessage());
    assertEquals(
        "the study has no band at 30000.0 Hz; its bands lie from 20 Hz to 20 kHz",
        assertThrows(IllegalArgumentException.class, () -> result.kind("in-ear").at(30_000))
            .getMessage());
    assertEquals(
        "the study has 5 units already, but at most 4 are asked for",
        assertThrows(IllegalArgumentException.class, () -> result.kind("in-ear").plan(1.5, 4, 5))
            .getMessage());
  }

  @Test
  void aGraphIsReExpressedByTheTranslator() {
    Response flat = Dense.curve(new double[] {10, 22_000}, new double[] {90, 90});
    GraphTranslation translation = result.translation();
    Translator translator = new Translator(translation.translation());
    CatalogueEntry entry = CatalogueEntry.raw("Oak 2", "in-ear", 2);

    assertEquals(translator.apply(entry, flat), translation.apply(entry, flat).graph());
    assertEquals(
        translation.apply(CatalogueEntry.raw("graph", "in-ear", 1), flat),
        translation.apply(flat, "in-ear"));
    PairedUnit heldOut = result.kind("in-ear").heldOutUnits().get(0);
    assertEquals(
        translator
            .applyPinned(CatalogueEntry.raw(heldOut.unit(), "in-ear", 2), heldOut.from())
            .bands(),
        translation.apply(heldOut).bands());
    assertEquals(heldOut.to().minus(heldOut.from()), heldOut.difference());
    assertEquals(5, result.kind("in-ear").units().size());
  }
}
