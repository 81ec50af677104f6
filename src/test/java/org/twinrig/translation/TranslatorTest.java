package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.analysis.Analysis;
import org.twinrig.band.BandGrid;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** A graph given as points and the same given on bands. */
class TranslatorTest {
  private static final CatalogueEntry GRAPH = CatalogueEntry.raw("a", "in-ear", 2);

  private static Translation translation() throws UnusableInput {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(SimulatedKind.IN_EAR)
            .withUnitsPerKind(5)
            .withSeatings(2)
            .withAxis(new SimulationPlan.Axis(80, 10, 22_000))
            .draw();
    Study study = drawn.declared(Settings.defaults());
    return Analysis.of(study, drawn.captures(), "none", 1).translation();
  }

  @Test
  void pointsAndTheirBandLevelsGiveTheSame() throws UnusableInput {
    Translation translation = translation();
    Translator translator = new Translator(translation);
    Response points =
        Dense.curve(new double[] {15, 100, 3000, 21_000}, new double[] {2, 0, 7, -12});
    Levels pinned = translation.anchor().pinnedLevels(points, translation.grid()).orElseThrow();
    TranslatedGraph asItCame = translator.apply(GRAPH, points);
    TranslatedGraph atTheAnchor = translator.applyPinned(GRAPH, pinned);
    for (int b = 0; b < translation.grid().size(); b++) {
      TranslatedBand one = asItCame.bands().get(b);
      TranslatedBand two = atTheAnchor.bands().get(b);
      assertEquals(shift(one), shift(two), 1e-9);
      assertEquals(one.predicted().orElseThrow().own(), two.predicted().orElseThrow().own());
      assertEquals(one.reasons(), two.reasons());
      assertEquals(pinned.db(b), two.fromDb().orElseThrow());
    }
  }

  private static double shift(TranslatedBand band) {
    return band.predicted().orElseThrow().toDb() - band.fromDb().orElseThrow();
  }

  @Test
  void otherBandsAreRefused() throws UnusableInput {
    Translator translator = new Translator(translation());
    BandGrid octaves = BandGrid.covering(500, 1000, 1);
    Levels levels = Levels.copyOf(octaves, new double[octaves.size()]);
    assertEquals(
        "a graph must be on the bands of the study",
        assertThrows(IllegalArgumentException.class, () -> translator.applyPinned(GRAPH, levels))
            .getMessage());
  }
}
