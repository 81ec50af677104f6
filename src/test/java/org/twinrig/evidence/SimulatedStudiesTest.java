package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.capture.Unit;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;

/**
 * Studies that two labs make of the same simulated fixtures: different units, different seatings.
 * With more pairs (the system property {@code twinrig.pairs}) it measures how often studies of one
 * truth are called different.
 */
class SimulatedStudiesTest {
  private static final int PAIRS = Integer.getInteger("twinrig.pairs", 12);
  private static final MeanDifference.Terms TERMS =
      new MeanDifference.Terms(0.5, 0.95, new Anchor.None());

  private static PairedUnits lab(SimulatedKind kind, int units, long seed) {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(kind)
            .withUnitsPerKind(units)
            .withSeatings(2)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
            .withSeed(seed)
            .draw();
    Settings settings = Settings.defaults();
    return new Pairing(drawn.declared(settings))
        .pair(Anchoring.of(settings, 1).apply(drawn.captures()).value(), Unit.Role.FIT)
        .get(0);
  }

  private static KindEstimate side(PairedUnits paired) {
    return new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
  }

  @Test
  void labsThatMeasureOneTruthAreSeldomCalledDifferent() {
    int wrong = 0;
    int pairs = 0;
    for (SimulatedKind kind :
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR)) {
      int before = wrong;
      for (int k = 0; k < PAIRS; k++) {
        MeanDifference d =
            MeanDifference.of(
                side(lab(kind, 10, 500 + 2L * k)), side(lab(kind, 12, 501 + 2L * k)), TERMS);
        wrong += d.octaves(MeanDifference.Verdict::different) > 0 ? 1 : 0;
        pairs++;
      }
      if (PAIRS > 12) {
        System.out.println(kind.label() + ": " + (wrong - before) + " of " + PAIRS);
      }
    }
    // 5 % and three standard errors of a binomial count.
    double bound = 0.05 * pairs + 3 * Math.sqrt(0.05 * 0.95 * pairs);
    assertTrue(wrong <= bound, wrong + " of " + pairs + " pairs");
  }

  /** One lab's head shows 1 dB more from 2 kHz to 4 kHz. */
  @Test
  void aPlantedDecibelIsFoundInItsOctaveOnly() {
    int found = 0;
    int pairs = Math.max(4, PAIRS / 3);
    for (int k = 0; k < pairs; k++) {
      PairedUnits moved = raised(lab(SimulatedKind.IN_EAR, 12, 900 + 2L * k));
      MeanDifference d =
          MeanDifference.of(side(moved), side(lab(SimulatedKind.IN_EAR, 12, 901 + 2L * k)), TERMS);
      found +=
          d.runs(MeanDifference.Verdict::different).stream()
                  .anyMatch(r -> r.fromHz() < 3900 && r.toHz() > 2050)
              ? 1
              : 0;
      assertEquals(
          0, d.octaves(v -> v.equivalent() && v.band().midHz() > 2000 && v.band().midHz() < 4000));
    }
    assertTrue(found >= 0.75 * pairs, found + " of " + pairs);
  }

  private static PairedUnits raised(PairedUnits lab) {
    List<Levels> means = lab.to().means().stream().map(SimulatedStudiesTest::raised).toList();
    List<List<Levels>> curves = new ArrayList<>();
    lab.to()
        .curves()
        .forEach(unit -> curves.add(unit.stream().map(SimulatedStudiesTest::raised).toList()));
    return new PairedUnits(
        lab.kind(),
        lab.grid(),
        lab.units(),
        lab.from(),
        new PairedUnits.OnFixture(means, lab.to().seatings(), lab.to().seatingVariance(), curves));
  }

  private static Levels raised(Levels levels) {
    double[] db = new double[levels.grid().size()];
    for (int b = 0; b < db.length; b++) {
      double hz = levels.grid().band(b).midHz();
      db[b] = levels.level(b).orElse(Double.NaN) + (hz > 2000 && hz < 4000 ? 1 : 0);
    }
    return Levels.copyOf(levels.grid(), db);
  }
}
