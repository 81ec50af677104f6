package org.twinrig.evidence;

import org.twinrig.internal.Checks;
import org.twinrig.regression.StudentT;

/**
 * Whether a mean is shown to lie within a limit on either side of 0: two one-sided t tests.
 *
 * <p>With mean {@code m}, standard error {@code SE}, {@code ν} degrees of freedom and limit {@code
 * Δ}, the hypothesis {@code δ <= -Δ} is tested by {@code (m+Δ)/SE} and {@code δ >= Δ} by {@code
 * (m-Δ)/SE}; the greater of both one-sided p values is that of the whole, and both are rejected at
 * level {@code α} exactly when the two-sided interval at confidence {@code 1-2α}, {@code m ±
 * t_{ν,1-α}·SE}, lies within the limit. A mean that is not shown to lie there may still lie there.
 *
 * <p>Without scatter ({@code SE = 0}) the mean is what it is: p is 0 inside the limit, 1 elsewhere.
 *
 * <p>Source: Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657.
 */
final class TwoOneSidedTests {
  private TwoOneSidedTests() {}

  /**
   * The p value of the whole, the greater of both, for {@code m} in dB, {@code SE} of 0 dB or more,
   * {@code ν} above 0, not whole where approximate, and {@code Δ} above 0 dB.
   */
  static double p(double meanDb, double standardErrorDb, double degreesOfFreedom, double limitDb) {
    Checks.finite(meanDb, "a mean in dB");
    Checks.notNegative(standardErrorDb, "a standard error in dB");
    Checks.positive(limitDb, "the limit of equivalence in dB");
    // The nearer limit has the greater p.
    double roomDb = limitDb - Math.abs(meanDb);
    if (standardErrorDb == 0) {
      return roomDb > 0 ? 0 : 1;
    }
    return StudentT.upperTail(roomDb / standardErrorDb, degreesOfFreedom);
  }
}
