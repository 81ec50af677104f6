package org.twinrig.regression;

import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.twinrig.internal.Checks;
import org.twinrig.internal.linalg.Matrix;

/**
 * The multiplier that makes an interval hold over all bands of a kind at once: sign-flip max-|t|.
 *
 * <p>With centred differences {@code e_i(b) = d_i(b) - mean_i d_i(b)} of {@code n} units and sign
 * patterns {@code ω}, each pattern gives
 *
 * <ul>
 *   <li>{@code m(b) = Σ ω_i e_i(b) / n},
 *   <li>{@code s²(b) = (Σ e_i(b)²/n - m(b)²)/(n-1)},
 *   <li>{@code T = max_b |m(b)|/s(b)}.
 * </ul>
 *
 * <p>{@code q} is the order statistic of rank {@code ⌈(1-α)·R⌉} of the {@code R} values of {@code
 * T}. For {@code n <= 12} all {@code 2^(n-1)} patterns with the first sign fixed are taken, which
 * is exact; otherwise 4999 seeded draws. Flipping a unit's whole curve keeps the dependence between
 * bands, so nothing about it needs to be assumed; that the units' differences are distributed
 * symmetrically about their mean is.
 *
 * <p>A unit without a level at a band takes no part there: {@code n} is the band's own count. A
 * band without scatter gives no {@code T}. Where a pattern lines up all residuals, {@code s = 0}
 * and {@code T} is infinite; the caller bounds {@code q} by the Bonferroni quantile.
 *
 * <p>Sources: Canay, Romano and Shaikh 2017, Econometrica 85:1013 (sign changes); Westfall and
 * Young 1993, Resampling-Based Multiple Testing (max-t).
 *
 * @param confidence {@code 1-α}, strictly between 0 and 1
 * @param seed of the draws; without effect while all patterns are taken
 */
public record SignFlipInterval(double confidence, long seed) {
  /** Up to this many units all patterns are taken: 2^11 = 2048 of them. */
  static final int EXACT_UP_TO_UNITS = 12;

  static final int DRAWS = 4999;

  /** Below this share of the mean square, s² is rounding error of an exact zero. */
  static final double RELATIVE_ZERO = 1e-12;

  public SignFlipInterval {
    Checks.fraction(confidence, "confidence");
  }

  /**
   * {@code q}, which may be infinite (see above), {@code R}, and whether every pattern was taken.
   */
  public record Result(double multiplier, int patterns, boolean exact) {}

  /**
   * The multiplier over all bands; 0 when no band scatters.
   *
   * @param differencesDb one row per unit, one column per band, NaN where the unit has no level; at
   *     least two units, and at least two levels at every band that is to count
   */
  public Result fit(double[][] differencesDb) {
    int units = differencesDb.length;
    if (units < 2) {
      throw new IllegalArgumentException("needs two or more units, but has " + units);
    }
    Centred centred = Centred.of(differencesDb);
    boolean exact = units <= EXACT_UP_TO_UNITS;
    double[][] signs =
        exact ? allPatterns(units) : drawnPatterns(units, new SplittableRandom(seed));
    Matrix sums = centred.flipped(signs);
    return new Result(quantile(signs.length, r -> centred.greatestT(sums, r)), signs.length, exact);
  }

  /** The order statistic of rank ⌈(1-α)R⌉ of the greatest |t| of each pattern. */
  private double quantile(int patterns, IntToDoubleFunction greatestT) {
    double[] greatest = IntStream.range(0, patterns).mapToDouble(greatestT).sorted().toArray();
    // A hair is taken off so that 0.95·20 does not become 20 by rounding.
    int rank = (int) Math.ceil(confidence * patterns - 1e-9);
    return greatest[Math.max(rank, 1) - 1];
  }

  /**
   * The multiplier for the difference of two means: two independent groups of units, one row per
   * unit as in {@link #fit}, each centred and flipped unit by unit, the groups apart. With {@code
   * m_g} and {@code s_g²} of a flipped group each of 4999 draws gives {@code T = max_b |m_1 -
   * m_2|/√(s_1² + s_2²)}, Welch's statistic (1947, Biometrika 34:28), so that the groups may
   * scatter differently.
   *
   * <p>A band counts where both groups have two units or more and scatter; without one {@code q} is
   * 0. Where all residuals of both groups line up, {@code T} is infinite; the caller bounds {@code
   * q}.
   */
  public double ofDifference(double[][] first, double[][] second) {
    if (first.length < 2 || second.length < 2) {
      throw new IllegalArgumentException(
          "each group needs two or more units, but they have %s and %s"
              .formatted(first.length, second.length));
    }
    SplittableRandom random = new SplittableRandom(seed);
    Centred one = Centred.of(first);
    Matrix onesSums = one.flipped(drawnPatterns(first.length, random));
    Centred two = Centred.of(second);
    Matrix twosSums = two.flipped(drawnPatterns(second.length, random));
    return quantile(DRAWS, r -> greatestT(one, onesSums, two, twosSums, r));
  }

  private static double greatestT(
      Centred one, Matrix onesSums, Centred two, Matrix twosSums, int draw) {
    double greatestSquare = 0;
    for (int b = 0; b < one.counts.length; b++) {
      double meanSquares = one.meanSquares[b] + two.meanSquares[b];
      if (one.counts[b] >= 2 && two.counts[b] >= 2 && meanSquares > 0) {
        double m1 = onesSums.get(draw, b) / one.counts[b];
        double m2 = twosSums.get(draw, b) / two.counts[b];
        double variance = one.variance(m1, b) + two.variance(m2, b);
        boolean none = variance <= RELATIVE_ZERO * meanSquares;
        double square = none ? Double.POSITIVE_INFINITY : (m1 - m2) * (m1 - m2) / variance;
        greatestSquare = Math.max(greatestSquare, square);
      }
    }
    return Math.sqrt(greatestSquare);
  }

  private static double[][] allPatterns(int units) {
    double[][] signs = new double[1 << (units - 1)][units];
    for (int r = 0; r < signs.length; r++) {
      signs[r][0] = 1;
      for (int i = 1; i < units; i++) {
        signs[r][i] = (r >> (i - 1) & 1) == 0 ? 1 : -1;
      }
    }
    return signs;
  }

  private static double[][] drawnPatterns(int units, SplittableRandom random) {
    double[][] signs = new double[DRAWS][units];
    for (double[] pattern : signs) {
      for (int i = 0; i < units; i++) {
        pattern[i] = random.nextBoolean() ? 1 : -1;
      }
    }
    return signs;
  }

  /** Residuals about each band's mean, 0 where missing, with each band's count and mean square. */
  private static final class Centred {
    final double[][] residuals;
    final int[] counts;
    final double[] meanSquares;

    private Centred(int units, int bands) {
      residuals = new double[units][bands];
      counts = new int[bands];
      meanSquares = new double[bands];
    }

    static Centred of(double[][] differences) {
      int bands = differences[0].length;
      Centred c = new Centred(differences.length, bands);
      for (int b = 0; b < bands; b++) {
        double sum = 0;
        for (double[] unit : differences) {
          if (!Double.isNaN(unit[b])) {
            sum += unit[b];
            c.counts[b]++;
          }
        }
        for (int i = 0; i < differences.length; i++) {
          if (!Double.isNaN(differences[i][b])) {
            c.residuals[i][b] = differences[i][b] - sum / c.counts[b];
            c.meanSquares[b] += c.residuals[i][b] * c.residuals[i][b] / c.counts[b];
          }
        }
      }
      return c;
    }

    /** Sums over units of the residuals under every pattern of signs: patterns × bands. */
    Matrix flipped(double[][] signs) {
      return Matrix.ofRows(signs).times(Matrix.ofRows(residuals));
    }

    /** {@code s²} of the mean {@code m} of a flipped group. */
    double variance(double m, int band) {
      return Math.max(0, meanSquares[band] - m * m) / (counts[band] - 1);
    }

    double greatestT(Matrix sums, int pattern) {
      double greatestSquare = 0;
      for (int b = 0; b < counts.length; b++) {
        if (counts[b] >= 2 && meanSquares[b] > 0) {
          double m = sums.get(pattern, b) / counts[b];
          double squareSum = meanSquares[b] - m * m;
          double t2 =
              squareSum <= RELATIVE_ZERO * meanSquares[b]
                  ? Double.POSITIVE_INFINITY
                  : m * m * (counts[b] - 1) / squareSum;
          greatestSquare = Math.max(greatestSquare, t2);
        }
      }
      return Math.sqrt(greatestSquare);
    }
  }
}
