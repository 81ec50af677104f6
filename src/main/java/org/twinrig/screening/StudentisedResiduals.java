package org.twinrig.screening;

import org.twinrig.study.BandSample;

/**
 * How far each unit of a kind departs from the others at one band.
 *
 * <p>Unit {@code i} of {@code n} departs from the mean of the others by {@code r_i = n/(n-1)·(d_i -
 * d̄)} dB; its leave-one-out studentised residual is {@code t_i = r_i/(s_(i)·√(n/(n-1)))}, {@code
 * s_(i)} the standard deviation of the other units. Where differences are normal, it follows
 * Student's t with {@code n-2} degrees of freedom. A unit without a level at the band departs by 0.
 *
 * <p>Source: Cook and Weisberg 1982, Residuals and Influence in Regression, 2.2 (from memory).
 */
@SuppressWarnings("ArrayRecordComponent") // read unit by unit, never compared
record StudentisedResiduals(
    int band, int members, double[] departuresDb, double[] t, double[] direction) {
  /** Captures are read to about this; units cannot be held to agree better. */
  private static final double RESOLUTION_DB = 0.01;

  /** The residuals at a band. Of 3 or more units. */
  static StudentisedResiduals of(int band, BandSample sample, int units) {
    int n = sample.size();
    double mean = 0;
    for (double d : sample.differencesDb()) {
      mean += d / n;
    }
    double squares = 0;
    for (double d : sample.differencesDb()) {
      squares += (d - mean) * (d - mean);
    }
    StudentisedResiduals of =
        new StudentisedResiduals(band, n, new double[units], new double[units], new double[units]);
    double spread = n / (n - 1.0);
    for (int k = 0; k < n; k++) {
      double e = sample.differencesDb()[k] - mean;
      double others = Math.sqrt(Math.max(0, squares - spread * e * e) / (n - 2));
      int unit = sample.members()[k];
      of.departuresDb[unit] = spread * e;
      of.t[unit] = spread * e / (Math.max(RESOLUTION_DB, others) * Math.sqrt(spread));
      of.direction[unit] = squares == 0 ? 0 : e / Math.sqrt(squares);
    }
    return of;
  }
}
