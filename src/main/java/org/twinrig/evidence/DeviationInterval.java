package org.twinrig.evidence;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.twinrig.internal.Checks;

/**
 * A standard deviation and its interval.
 *
 * <p>{@code s·√(ν/χ²_{1-α/2}(ν)) <= σ <= s·√(ν/χ²_{α/2}(ν))} for {@code s²} on {@code ν} degrees of
 * freedom. It assumes that the deviations are normal and, where they were pooled over units, that
 * every unit scatters alike. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8.
 *
 * @param sdDb {@code s}, dB
 * @param lowDb lower end, dB
 * @param highDb upper end, dB
 */
public record DeviationInterval(double sdDb, double lowDb, double highDb) {

  /**
   * The interval of a standard deviation.
   *
   * @param sdDb {@code s}, dB, 0 or more
   * @param degreesOfFreedom {@code ν}, 1 or more
   * @param confidence of the interval, strictly between 0 and 1
   * @return the interval
   * @throws IllegalArgumentException when an argument is out of range
   */
  public static DeviationInterval of(double sdDb, int degreesOfFreedom, double confidence) {
    Checks.notNegative(sdDb, "a standard deviation");
    Checks.fraction(confidence, "confidence");
    if (degreesOfFreedom < 1) {
      throw new IllegalArgumentException(
          "degrees of freedom must be 1 or more, but are " + degreesOfFreedom);
    }
    // The generator is left out: nothing is drawn.
    ChiSquaredDistribution chiSquare = new ChiSquaredDistribution(null, degreesOfFreedom);
    double tail = (1 - confidence) / 2;
    return new DeviationInterval(
        sdDb,
        sdDb * Math.sqrt(degreesOfFreedom / chiSquare.inverseCumulativeProbability(1 - tail)),
        sdDb * Math.sqrt(degreesOfFreedom / chiSquare.inverseCumulativeProbability(tail)));
  }
}
