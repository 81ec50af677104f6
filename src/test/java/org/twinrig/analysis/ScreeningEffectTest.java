package org.twinrig.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.PlannedStudy;
import org.twinrig.capture.Capture;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Against the two studies themselves: one that uses what is doubted, and one that leaves it out.
 */
class ScreeningEffectTest {
  private static final SimulatedStudy DRAWN =
      PlannedStudy.troubled(
              SimulationPlan.standard()
                  .withKinds(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR)
                  .withUnitsPerKind(6)
                  .withSeatings(3)
                  .withSeed(12),
              new SimulationPlan.Troubles(0.3, 0, 0, 0, 0, 0))
          .draw();

  private static StudyOutcome outcome(ScreeningMode mode, int threads) throws UnusableInput {
    Study study =
        new Study(
            Path.of("."),
            "simulated",
            DRAWN.from(),
            DRAWN.to(),
            DRAWN.units(),
            DRAWN.captures().stream().map(Capture::entry).toList(),
            DRAWN.sessions(),
            Optional.empty(),
            Settings.defaults().with(Setting.SCREENING, mode),
            Path.of("."),
            List.of(),
            Map.of());
    return Analysis.of(study, DRAWN.captures(), "made", threads);
  }

  @Test
  void theChangeIsThatBetweenTheTwoStudies() throws UnusableInput {
    StudyOutcome in = outcome(ScreeningMode.SUGGEST, 1);
    StudyOutcome out = outcome(ScreeningMode.EXCLUDE, 2);
    List<ScreeningEffect> effects = ScreeningEffect.of(in);
    assertEquals(effects, ScreeningEffect.of(out));
    assertTrue(!effects.isEmpty());
    for (ScreeningEffect effect : effects) {
      ScreeningEffect.Change change = effect.largest().orElseThrow();
      double largest = 0;
      double inBass = 0;
      double outBass = 0;
      int bands = 0;
      for (int b = 0; b < in.study().settings().grid().size(); b++) {
        double changeDb = meanDb(out, effect.kind(), b) - meanDb(in, effect.kind(), b);
        largest = Math.abs(changeDb) > Math.abs(largest) ? changeDb : largest;
        double hz = in.study().settings().grid().band(b).midHz();
        if (hz >= 20 && hz <= 200) {
          inBass += meanDb(in, effect.kind(), b);
          outBass += meanDb(out, effect.kind(), b);
          bands++;
        }
      }
      assertEquals(largest, change.changeDb(), 1e-12);
      assertTrue(Math.abs(largest) > 0.1);
      assertEquals(inBass / bands, effect.bass().orElseThrow().withDb(), 1e-12);
      assertEquals(outBass / bands, effect.bass().orElseThrow().withoutDb(), 1e-12);
      assertTrue(outBass > inBass, "lost seals lack bass");
    }
  }

  private static double meanDb(StudyOutcome outcome, String kind, int band) {
    KindOutcome of =
        outcome.kinds().stream().filter(k -> k.kind().equals(kind)).findFirst().orElseThrow();
    return ((BandOutcome.Fitted) of.transfer().bands().get(band).outcome()).mean().meanDb();
  }

  @Test
  void aStudyWithoutADoubtHasNoEffect() throws UnusableInput {
    StudyOutcome in = outcome(ScreeningMode.SUGGEST, 1);
    StudyOutcome undoubted =
        new StudyOutcome(
            in.study(),
            in.fingerprint(),
            in.captures(),
            new org.twinrig.screening.Screening(in.screening().accepted(), List.of()),
            new ArrayList<>(in.kinds()),
            in.sessions(),
            in.problems(),
            List::of);
    assertEquals(List.of(), ScreeningEffect.of(undoubted));
  }
}
