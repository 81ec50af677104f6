package org.twinrig.screening;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How high Student's t climbs by chance somewhere along the bands.
 *
 * <p>Neighbouring bands go together, so counting them all as independent asks too much. For a
 * smooth t process with {@code ν} degrees of freedom along a line,
 *
 * <p>{@code P(max |t| > u) <= 2·[ P(T_ν > u) + L/(2π)·(1 + u²/ν)^(-(ν-1)/2) ]},
 *
 * <p>the expected number of excursions above {@code u}, with {@code L} the length of the path that
 * the residuals, as a vector over units scaled to length 1, run through from band to band
 * (dimensionless; the sum of the chords). The bound at a level is the {@code u} where the right
 * side equals it, or Bonferroni's over the bands where that is lower. Sources, from memory: Naiman
 * 1986, Ann. Stat. 14:896; Worsley 1994, Adv. Appl. Probab. 26:13; Taylor and Worsley 2007, J. Am.
 * Stat. Assoc. 102:913 (the length from residuals). {@code ν} is 2 or more.
 */
record PeakBound(double pathLength, int bands, int degreesOfFreedom) {

  /** The bound for residuals. Per band they go over units, scaled to length 1. */
  static PeakBound of(List<double[]> unitResiduals, int degreesOfFreedom) {
    double length = 0;
    for (int b = 1; b < unitResiduals.size(); b++) {
      double chord = 0;
      for (int i = 0; i < unitResiduals.get(b).length; i++) {
        double step = unitResiduals.get(b)[i] - unitResiduals.get(b - 1)[i];
        chord += step * step;
      }
      length += Math.sqrt(chord);
    }
    return new PeakBound(length, unitResiduals.size(), degreesOfFreedom);
  }

  /** The {@code u} that {@code max |t|} exceeds with at most this probability. */
  double at(double probability) {
    TDistribution t = new TDistribution(null, degreesOfFreedom);
    double bonferroni = -t.inverseCumulativeProbability(probability / (2.0 * bands));
    if (excursions(t, bonferroni) >= probability) {
      return bonferroni;
    }
    double low = 0;
    double high = bonferroni;
    // Bisection to the last digit: the expected number falls steadily with u.
    for (int step = 0; step < 60; step++) {
      double middle = (low + high) / 2;
      if (excursions(t, middle) > probability) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private double excursions(TDistribution t, double u) {
    double nu = degreesOfFreedom;
    return 2
        * (t.cumulativeProbability(-u)
            + pathLength / (2 * Math.PI) * Math.pow(1 + u * u / nu, -(nu - 1) / 2));
  }
}
