package org.twinrig.evidence;

import java.util.List;
import org.twinrig.internal.Checks;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.regression.StudentT;

/**
 * Uncertainty of a result whose inputs are independent, after JCGM 100:2008 (the Guide to the
 * expression of uncertainty in measurement).
 *
 * <ul>
 *   <li>{@code u_c² = Σ (c_i u_i)²} (5.1.2, equation 10);
 *   <li>{@code ν_eff = u_c⁴ / Σ ((c_i u_i)⁴/ν_i)} (G.4.1, equation G.2b), not cut to a whole
 *       number: the t distribution is defined for any, and cutting would turn 18.999 into 18;
 *   <li>{@code k = t_p(ν_eff)} (G.6.4) and {@code U = k u_c} (6.2.1).
 * </ul>
 *
 * <p>{@code c_i} is the sensitivity, {@code u_i} the standard uncertainty and {@code ν_i} the
 * degrees of freedom of input {@code i}, which contributes {@code (c_i u_i)²}. Inputs without
 * uncertainty count for nothing; when none has any, {@code ν_eff} is infinite. Correlated inputs
 * (5.2) are not covered.
 */
public record UncertaintyBudget(List<VarianceEstimate> contributions, double confidence) {

  public UncertaintyBudget {
    contributions = List.copyOf(contributions);
    Checks.fraction(confidence, "confidence");
  }

  public double variance() {
    return contributions.stream().mapToDouble(VarianceEstimate::variance).sum();
  }

  /** Combined standard uncertainty: {@code u_c}, in the unit of the measurand. */
  public double combined() {
    return Math.sqrt(variance());
  }

  /** {@code ν_eff}, not a whole number; infinite when no input with finitely many counts. */
  public double effectiveDegreesOfFreedom() {
    return variance() == 0 ? Double.POSITIVE_INFINITY : VarianceEstimate.freedom(contributions);
  }

  public double coverageFactor() {
    return StudentT.twoSided(confidence, effectiveDegreesOfFreedom());
  }

  /**
   * Expanded uncertainty {@code U}: half-width of the coverage interval in the unit of the
   * measurand.
   */
  public double expanded() {
    return coverageFactor() * combined();
  }
}
