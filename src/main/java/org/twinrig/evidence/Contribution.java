package org.twinrig.evidence;

import java.util.Objects;
import org.twinrig.internal.Checks;

/**
 * One line of an uncertainty budget: an input quantity whose estimate is independent of the others.
 *
 * @param name what it is called
 * @param standardUncertainty {@code u(x_i)}, in the unit of the input, 0 or more
 * @param degreesOfFreedom {@code ν_i}, above 0; infinite where the uncertainty is held to be exact
 * @param sensitivity {@code c_i}, unit of the measurand per unit of the input
 * @param distribution what is assigned to the input
 */
public record Contribution(
    String name,
    double standardUncertainty,
    double degreesOfFreedom,
    double sensitivity,
    Distribution distribution) {

  /** What is assigned to an input. */
  public enum Distribution {
    /**
     * Scaled and shifted t with the input's degrees of freedom (JCGM 101:2008, 6.4.9); with
     * infinitely many it is the normal distribution.
     */
    STUDENT_T,
    /** Rectangular with half-width {@code √3·u} (JCGM 101:2008, 6.4.2). */
    RECTANGULAR
  }

  public Contribution {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(distribution, "distribution");
    Checks.notNegative(standardUncertainty, "the standard uncertainty of " + name);
    Checks.finite(sensitivity, "the sensitivity of " + name);
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "the degrees of freedom of " + name + " must be above 0, but are " + degreesOfFreedom);
    }
  }

  /**
   * An input of type A in the unit of the measurand, with {@code u(x_i)} and {@code ν_i} above 0.
   */
  public static Contribution typeA(
      String name, double standardUncertainty, double degreesOfFreedom) {
    return new Contribution(name, standardUncertainty, degreesOfFreedom, 1, Distribution.STUDENT_T);
  }

  /**
   * An input of which only limits {@code ±a} are known, in the unit of the measurand: {@code u =
   * a/√3} (JCGM 100:2008, 4.3.7), with infinite degrees of freedom (G.4.3).
   */
  public static Contribution within(String name, double halfWidth) {
    return new Contribution(
        name, halfWidth / Math.sqrt(3), Double.POSITIVE_INFINITY, 1, Distribution.RECTANGULAR);
  }

  /** What the input adds to the combined variance: {@code (c_i u(x_i))²}. */
  public double variance() {
    double part = sensitivity * standardUncertainty;
    return part * part;
  }
}
