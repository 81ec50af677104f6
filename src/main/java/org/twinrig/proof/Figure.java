package org.twinrig.proof;

import org.twinrig.internal.Checks;

/**
 * A figure from simulated studies.
 *
 * @param value the figure
 * @param monteCarloSe its standard error, taken between studies
 */
public record Figure(double value, double monteCarloSe) {
  /** Refuses anything that is not a number. */
  public Figure {
    Checks.finite(value, "a figure");
    Checks.notNegative(monteCarloSe, "a Monte Carlo standard error");
  }
}
