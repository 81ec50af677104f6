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
    IntervalProof proof =
        full
            ? IntervalProof.of(PredictionModel.AVERAGE, 8, 16, 30)
            : IntervalProof.of(PredictionModel.AVERAGE, 8);
    for (IntervalProof.Row row : proof.rows(Small.harness(full ? FULL : FEW, 7, 2))) {
      for (Clustered coverage : List.of(row.offset().coverage(), row.tried().coverage())) {
        double slack = full ? 0 : 3 * coverage.se();
        double bound = IntervalProof.brokenBound(row.span(), coverage).orElse(coverage.value());
        assertTrue(Math.abs(coverage.value() - bound) <= slack, () -> row + ": " + bound);
      }
    }
  }
}
