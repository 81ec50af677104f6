package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.study.PredictionModel;

/**
 * Prediction intervals hold units that no fit saw as often as they say. The full count is set in
 * the build (mvn verify -Pproof: 200 studies for 8, 16 and 30 units of a kind, the bounds as they
 * are); otherwise a few studies of 8 units, the bounds widened by three standard errors.
 */
class PredictionIntervalTest {
  private static final int FULL = 200;
  private static final int FEW = 12;

  @Test
  void unseenUnitsLieInsideAsOftenAsStated() {
    boolean full = Integer.getInteger("twinrig.coverageStudies", 0) >= FULL;
    ProofPlan plan =
        full
            ? ProofPlan.standard(FULL, 7)
            : ProofPlan.standard(FEW, 7).withUnitsPerKind(List.of(8));
    ProofOutcome outcome = IntervalProof.run(plan, 2, (units, done) -> {});
    for (PredictionModel model : List.of(PredictionModel.OFFSET, PredictionModel.AUTO)) {
      for (Promise.Breach breach : outcome.promise(model).breaches()) {
        double slack = full ? 0 : 3 * breach.coverage().monteCarloSe();
        assertTrue(
            Math.abs(breach.coverage().value() - breach.bound()) <= slack,
            () -> model + ": " + breach);
      }
    }
  }
}
