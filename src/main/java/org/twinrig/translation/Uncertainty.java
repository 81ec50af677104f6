package org.twinrig.translation;

import java.util.List;
import org.twinrig.internal.VarianceEstimate;

/** A standard uncertainty in dB, on degrees of freedom above 0. */
record Uncertainty(double standardDb, double degreesOfFreedom) {
  static final Uncertainty NONE = new Uncertainty(0, Double.POSITIVE_INFINITY);

  /** Both together; one that is 0 changes nothing. */
  Uncertainty and(Uncertainty other) {
    return other.standardDb == 0
        ? this
        : and(other.standardDb * other.standardDb, other.degreesOfFreedom);
  }

  /**
   * Both together, the other one a variance in dB²: JCGM 100:2008, 5.1.2, with effective degrees of
   * freedom after its G.4.1, cut to the next lower whole number.
   */
  Uncertainty and(double varianceDb2, double freedom) {
    double own = standardDb * standardDb;
    double standard = Math.sqrt(own + varianceDb2);
    if (own == 0) {
      return new Uncertainty(standard, freedom);
    }
    double effective =
        VarianceEstimate.freedom(
            List.of(
                new VarianceEstimate(varianceDb2, freedom),
                new VarianceEstimate(own, degreesOfFreedom)));
    return new Uncertainty(standard, Math.max(1, Math.floor(effective + 1e-9)));
  }
}
