package org.twinrig.regression;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/**
 * How widely predictions of single units err, band by band: the mean squares of errors on units
 * left out, each moderated by its neighbours and then averaged over the bands within 1/6 octave.
 *
 * <p>With few units the mean square {@code s²} of one band is badly known, and its neighbours know
 * something of it. With {@code d = n-1} and {@code e(b) = ln max(s², 1e-8) - ψ(d/2) + ln(d/2)},
 * {@code τ(b)} the mean of {@code e} over the bands within 1/2 octave ({@code w = N/2} to either
 * side of {@code B} in all) and {@code v = Σ(e-τ)²/(B - B/(2w+1)) - ψ'(d/2)}:
 *
 * <ul>
 *   <li>{@code d0 = 2·ψ'⁻¹(v)}, at most 100, and 100 where {@code v <= 0.02};
 *   <li>{@code s0² = exp(τ + ψ(d0/2) - ln(d0/2))};
 *   <li>{@code d0} is then cut to 4: bands go together, so that they seem to agree on more than
 *       they know;
 *   <li>{@code s²_m = (d0·s0² + d·s²)/(d0 + d)}, with {@code ν = d0 + d} degrees of freedom.
 * </ul>
 *
 * <p>Bands with fewer than five units keep {@code s²} and {@code n-1}; where bands have different
 * numbers of units {@code ψ'(d/2)} is its mean over them.
 *
 * <p>Source: Smyth 2004, Stat. Appl. Genet. Mol. Biol. 3:3, equations for {@code d0} and {@code
 * s0²}, with a trend in place of one {@code s0²}.
 */
public final class ErrorVariance {
  private static final int FEWEST_UNITS = 5;
  private static final double FLOOR = 1e-8;
  private static final double MOST_PRIOR_FREEDOM = 100;
  private static final double LEAST_EXCESS = 0.02;
  private static final double PRIOR_FREEDOM_USED = 4;

  private final double[] variances;
  private final double[] degreesOfFreedom;

  private ErrorVariance(double[] variances, double[] degreesOfFreedom) {
    this.variances = variances;
    this.degreesOfFreedom = degreesOfFreedom;
  }

  /** The variance that an interval at a band rests on, dB²; NaN where there are no errors. */
  public double variance(int band) {
    return variances[band];
  }

  /** Degrees of freedom of it. */
  public double degreesOfFreedom(int band) {
    return degreesOfFreedom[band];
  }

  /** What does not change when errors are drawn anew: which bands count, and their units. */
  public static final class Bands {
    private final int[] units;
    private final Neighbourhood estimated;
    private final Neighbourhood moderated;
    private final int width;
    private final int many;
    private final double[] logBias;
    private double samplingVariance;

    /**
     * The bands of a kind.
     *
     * @param units how many have an error at each band; a band with none has no variance (NaN)
     */
    public Bands(int[] units, int perOctave) {
      this.units = units.clone();
      this.estimated = Neighbourhood.of(units.length, b -> units[b] > 0, perOctave / 6);
      this.moderated = Neighbourhood.of(units.length, b -> enough(b), perOctave / 2);
      this.width = 2 * (perOctave / 2) + 1;
      this.logBias = new double[units.length];
      int counted = 0;
      for (int b = 0; b < units.length; b++) {
        if (enough(b)) {
          double half = (units[b] - 1) / 2.0;
          logBias[b] = Math.log(half) - Gamma.digamma(half);
          samplingVariance += Gamma.trigamma(half);
          counted++;
        }
      }
      this.many = counted;
      samplingVariance /= Math.max(1, counted);
    }

    private boolean enough(int band) {
      return units[band] >= FEWEST_UNITS;
    }

    /** The variances that go with mean squares of errors, dB², one per band. */
    public ErrorVariance of(double[] meanSquares) {
      double[] moderate = meanSquares.clone();
      double[] freedom = new double[units.length];
      for (int b = 0; b < freedom.length; b++) {
        freedom[b] = units[b] - 1.0;
      }
      if (many > 0) {
        moderate(moderate, freedom);
      }
      double[] averaged = new double[moderate.length];
      for (int b = 0; b < averaged.length; b++) {
        averaged[b] = units[b] > 0 ? estimated.mean(b, moderate) : Double.NaN;
      }
      return new ErrorVariance(averaged, freedom);
    }

    private void moderate(double[] variances, double[] freedom) {
      double[] logs = new double[units.length];
      for (int b = 0; b < logs.length; b++) {
        logs[b] = enough(b) ? Math.log(Math.max(FLOOR, variances[b])) + logBias[b] : 0;
      }
      double[] trend = new double[units.length];
      double squares = 0;
      for (int b = 0; b < logs.length; b++) {
        if (enough(b)) {
          trend[b] = moderated.mean(b, logs);
          squares += (logs[b] - trend[b]) * (logs[b] - trend[b]);
        }
      }
      double excess = width == 1 ? 0 : squares / (many - (double) many / width) - samplingVariance;
      double prior =
          excess <= LEAST_EXCESS
              ? MOST_PRIOR_FREEDOM
              : Math.min(MOST_PRIOR_FREEDOM, 2 * inverseTrigamma(excess));
      double logFactor = Gamma.digamma(prior / 2) - Math.log(prior / 2);
      double used = width == 1 ? 0 : Math.min(PRIOR_FREEDOM_USED, prior);
      for (int b = 0; b < logs.length; b++) {
        if (enough(b)) {
          double own = freedom[b];
          double ofNeighbours = Math.exp(trend[b] + logFactor);
          variances[b] = (used * ofNeighbours + own * variances[b]) / (used + own);
          freedom[b] = used + own;
        }
      }
    }
  }

  /** {@code ψ'⁻¹}; the bracket holds all that {@code d0} at most 100 and {@code v > 0.02} ask. */
  static double inverseTrigamma(double x) {
    return new BrentSolver(1e-12, 1e-12)
        .solve(500, y -> 1 / Gamma.trigamma(y) - 1 / x, 1e-9, MOST_PRIOR_FREEDOM / 2 + 1);
  }
}
