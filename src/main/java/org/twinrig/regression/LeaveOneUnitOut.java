package org.twinrig.regression;

/**
 * The error made on a unit by a transfer that never saw it, for the plain offset.
 *
 * <p>With differences {@code d_i} of {@code n} units and their mean {@code d̄}, the mean of the
 * others misses unit {@code i} by {@code r_i = (d_i - d̄)·n/(n-1)}, and {@code loo_rms =
 * √mean(r_i²)}. The offset has nothing to choose, so these errors are already those of nested
 * leaving out.
 *
 * <p>Source: Stone 1974, J. R. Stat. Soc. B 36:111; the closed form is that of a mean.
 */
public final class LeaveOneUnitOut {
  private LeaveOneUnitOut() {}

  /** The error {@code r_i} on each unit, dB, from the units' differences, two or more. */
  public static double[] errors(double[] differencesDb) {
    int n = differencesDb.length;
    if (n < 2) {
      throw new IllegalArgumentException("needs two or more units, but has " + n);
    }
    double sum = 0;
    for (double d : differencesDb) {
      sum += d;
    }
    double[] errors = new double[n];
    for (int i = 0; i < n; i++) {
      errors[i] = (differencesDb[i] - sum / n) * n / (n - 1);
    }
    return errors;
  }

  /** Root mean square, dB. */
  public static double rms(double[] errorsDb) {
    double squares = 0;
    for (double e : errorsDb) {
      squares += e * e;
    }
    return Math.sqrt(squares / errorsDb.length);
  }
}
