package org.twinrig.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Bands;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Analysing again after a change gives what analysing afresh gives. */
class AnalysisAgainTest {
  private static final SimulatedStudy DRAWN =
      SimulationPlan.standard()
          .withKinds(SimulatedKind.IN_EAR, SimulatedKind.OPEN_OVER_EAR)
          .withUnitsPerKind(5)
          .withSeatings(2)
          .withBothSidesShare(0)
          .withAxis(new SimulationPlan.Axis(60, 10, 22_000))
          .withSeed(3)
          .draw();
  private static final Settings SETTINGS =
      Settings.defaults()
          .with(Setting.BANDS, new Bands(3, 20, 20_000))
          .with(Setting.MODEL, PredictionModel.OFFSET);

  private static List<Capture> captures(Study study) {
    return DRAWN.captures().stream()
        .map(
            c ->
                new Capture(
                    study.captures().stream()
                        .filter(e -> e.file().equals(c.entry().file()))
                        .findFirst()
                        .orElseThrow(),
                    c.response(),
                    c.sha256()))
        .toList();
  }

  private static StudyOutcome afresh(Study study) throws Exception {
    return Analysis.of(study, captures(study), "print", 1);
  }

  private static StudyOutcome again(StudyOutcome earlier, Study study) throws Exception {
    return Analysis.again(earlier, study, captures(study), "print", 2);
  }

  private static CaptureEntry without(CaptureEntry e) {
    return new CaptureEntry(
        e.unit(),
        e.fixture(),
        e.side(),
        e.seating(),
        e.file(),
        e.session(),
        "out",
        e.note(),
        "",
        e.line());
  }

  @Test
  void onlyTheKindThatMovedIsEstimatedAnew() throws Exception {
    Study study = DRAWN.declared(SETTINGS);
    StudyOutcome before = afresh(study);
    CaptureEntry first = study.captures().get(0);
    Study changed =
        new Study(
            study.folder(),
            study.title(),
            study.from(),
            study.to(),
            study.units(),
            study.captures().stream().map(e -> e.equals(first) ? without(e) : e).toList(),
            study.sessions(),
            study.catalogue(),
            SETTINGS,
            study.capturesFolder(),
            study.inputs(),
            study.references());
    StudyOutcome after = again(before, changed);
    assertEquals(afresh(changed).kinds(), after.kinds());
    assertEquals(2, after.kinds().size());
    String moved =
        study.units().stream()
            .filter(u -> u.name().equals(first.unit()))
            .findFirst()
            .orElseThrow()
            .kind();
    for (int k = 0; k < 2; k++) {
      if (after.kinds().get(k).kind().equals(moved)) {
        assertNotEquals(before.kinds().get(k).paired(), after.kinds().get(k).paired());
      } else {
        assertSame(before.kinds().get(k), after.kinds().get(k));
      }
    }
  }

  @Test
  void otherSettingsAreEstimatedAnew() throws Exception {
    StudyOutcome before = afresh(DRAWN.declared(SETTINGS));
    Study changed = DRAWN.declared(SETTINGS.with(Setting.CONFIDENCE, 0.9));
    StudyOutcome after = again(before, changed);
    assertEquals(afresh(changed).kinds(), after.kinds());
    assertNotSame(before.kinds().get(0), after.kinds().get(0));
  }

  @Test
  void theOtherWayRoundIsEstimatedAnew() throws Exception {
    Study study = DRAWN.declared(SETTINGS);
    StudyOutcome before = afresh(study);
    assertEquals(afresh(study.reversed()).kinds(), again(before, study.reversed()).kinds());
  }
}
