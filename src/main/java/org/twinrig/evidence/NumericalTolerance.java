package org.twinrig.evidence;

import org.twinrig.internal.Checks;

/**
 * How closely two statements of the same uncertainty must agree (JCGM 101:2008, 7.9.2): with {@code
 * u = c·10^l} and {@code c} a whole number of the wanted significant digits, {@code δ = ½·10^l}.
 */
final class NumericalTolerance {
  private NumericalTolerance() {}

  /**
   * The tolerance.
   *
   * @param standardUncertainty {@code u}, above 0
   * @param significantDigits wanted of it, 1 or more
   * @return {@code δ} in the unit of {@code u}
   */
  static double of(double standardUncertainty, int significantDigits) {
    Checks.positive(standardUncertainty, "a standard uncertainty");
    int exponent = (int) Math.floor(Math.log10(standardUncertainty)) - (significantDigits - 1);
    // 0.96 to one digit is 1, not 10 tenths.
    boolean carries =
        Math.rint(standardUncertainty / Math.pow(10, exponent)) >= Math.pow(10, significantDigits);
    return 0.5 * Math.pow(10, carries ? exponent + 1 : exponent);
  }
}
