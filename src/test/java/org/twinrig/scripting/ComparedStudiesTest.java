package org.twinrig.scripting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Levels;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;

/** Two studies compared by a script are compared as the command does it; truths are the plan's. */
class ComparedStudiesTest {
  private static final SimulationPlan PLAN =
      SimulationPlan.standard()
          .withKinds(SimulatedKind.OPEN_OVER_EAR)
          .withUnitsPerKind(5)
          .withSeatings(2)
          .withAxis(new SimulationPlan.Axis(120, 10, 22_000));

  private static SimulatedLab lab(long seed) {
    return SimulatedLab.of(PLAN.withSeed(seed), FixturePair.ALIKE)
        .with(s -> s.with(Setting.MODEL, PredictionModel.OFFSET));
  }

  @Test
  void twoStudiesAreComparedAsTheCommandDoesIt() throws UnusableInput {
    StudyResult one = lab(1).study().analyse();
    StudyResult two = lab(2).study().analyse();
    StudyComparison.Kind expected =
        StudyComparison.of(
                List.of(
                    new StudyComparison.Named("North", "North", one.outcome()),
                    new StudyComparison.Named("South", "South", two.outcome())))
            .kinds()
            .get(0);

    ComparedStudies compared =
        ComparedStudies.of(
            new ComparedStudies.Named("North", one), new ComparedStudies.Named("South", two));

    assertEquals(List.of("open over-ear"), compared.kinds());
    assertEquals(expected.pairs().get(0).difference(), compared.difference("open over-ear"));
    assertEquals(expected.combined(), compared.combined("open over-ear"));
    assertEquals("difference-open_over-ear", compared.figure("open over-ear").name());
    assertEquals(
        "there is no kind `in-ear`; it must be one of open over-ear",
        assertThrows(IllegalArgumentException.class, () -> compared.difference("in-ear"))
            .getMessage());
  }

  @Test
  void aStudyIsNotComparedWithItself() throws UnusableInput {
    StudyResult one = lab(1).study().analyse();
    ComparedStudies.Named north = new ComparedStudies.Named("North", one);

    assertThrows(
        UnusableInput.class,
        () -> ComparedStudies.of(north, new ComparedStudies.Named("South", one)));
    StudyResult sterner = lab(1).study().with(s -> s.with(Setting.CONFIDENCE, 0.9)).analyse();
    assertEquals(
        "South: 20 of the 20 capture files it rests on are the same as in North; compare studies"
            + " that have no captures in common: the same captures, whatever the settings, say"
            + " nothing about another lab",
        assertThrows(
                UnusableInput.class,
                () -> ComparedStudies.of(north, new ComparedStudies.Named("South", sterner)))
            .problems()
            .get(0)
            .text());
    assertEquals(
        "both studies are called `North`",
        assertThrows(IllegalArgumentException.class, () -> ComparedStudies.of(north, north))
            .getMessage());
  }

  @Test
  void theTruthIsTheSimulation() {
    SimulatedLab lab = lab(4);
    String unit = lab.study().declared().units().get(0).name();

    Levels own = lab.trueTransfer(unit);

    assertEquals(
        PLAN.withSeed(4)
            .draw(FixturePair.ALIKE)
            .trueUnitTransfer(unit, own.grid(), lab.study().declared().settings().anchor()),
        own);
    assertEquals(lab(4).study().fingerprint(), lab.study().fingerprint());
    assertThrows(IllegalArgumentException.class, () -> lab.trueMeanTransfer("on head"));
  }
}
