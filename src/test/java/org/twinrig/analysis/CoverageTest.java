package org.twinrig.analysis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.regression.BandOutcome;
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
import org.twinrig.study.Study;

/**
 * Simulated studies whose true mean transfer is known: how often the simultaneous interval holds
 * the whole of it. The count is set in the build (mvn verify -Pproof: 200 studies); with fewer, the
 * bounds widen by three binomial standard errors of the reduced count.
 */
class CoverageTest {
  private static final double LEAST = 0.90;
  private static final double MOST = 0.98;

  private static final SimulationPlan PLAN =
      SimulationPlan.standard().withAxis(new SimulationPlan.Axis(120, 10, 22_000));

  /** They do not depend on how many units a study has. */
  private static final Map<SimulatedKind, Levels> TRUTHS = new EnumMap<>(SimulatedKind.class);

  @BeforeAll
  static void workOutTheTruths() {
    BandGrid grid = BandGrid.covering(20, 20_000, 12);
    Anchor anchor = new Anchor.Range(500, 1000);
    for (SimulatedKind kind :
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR)) {
      TRUTHS.put(kind, PLAN.draw().trueMeanTransfer(kind, grid, anchor));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 16})
  void theSimultaneousIntervalHoldsTheTruth(int unitsPerKind) {
    int studies = Integer.getInteger("twinrig.coverageStudies", 60);
    SimulationPlan plan = PLAN.withUnitsPerKind(unitsPerKind);
    int held = 0;
    for (int seed = 1; seed <= studies; seed++) {
      SimulatedStudy drawn = plan.withSeed(90_000 + seed).draw();
      for (PairedUnits paired : paired(drawn)) {
        held += holds(paired, TRUTHS.get(SimulatedKind.ofLabel(paired.kind()))) ? 1 : 0;
      }
    }
    double share = held / (3.0 * studies);
    double slack = studies >= 200 ? 0 : 3 * Math.sqrt(0.95 * 0.05 / (3.0 * studies));
    System.out.printf(
        Locale.ROOT,
        "simultaneous interval, n = %d: holds the truth in %.3f of %d kind-studies%n",
        unitsPerKind,
        share,
        3 * studies);
    assertTrue(
        share >= LEAST - slack && share <= MOST + slack,
        () -> "held in " + share + " of studies with n = " + unitsPerKind);
  }

  private static List<PairedUnits> paired(SimulatedStudy drawn) {
    Study study = drawn.declared(Settings.defaults());
    return new Pairing(study)
        .pair(Anchoring.of(study.settings(), 2).apply(drawn.captures()).value(), Unit.Role.FIT);
  }

  private static boolean holds(PairedUnits paired, Levels truth) {
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
    for (int b = 0; b < truth.grid().size(); b++) {
      if (estimate.bands().get(b) instanceof BandOutcome.Fitted fitted
          && Math.abs(fitted.mean().meanDb() - truth.db(b)) > fitted.simultaneousHalfDb()) {
        return false;
      }
    }
    return true;
  }
}
