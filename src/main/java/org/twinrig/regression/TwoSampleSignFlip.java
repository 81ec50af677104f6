package org.twinrig.regression;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.twinrig.internal.Checks;
import org.twinrig.internal.linalg.Matrix;

/**
 * The multiplier that makes an interval of the difference of two means hold over all bands at once:
 * sign-flip max-|t| of two independent groups of units.
 *
 * <p>Each group's curves are centred at every band and flipped unit by unit, the groups apart. With
 * {@code m_g} and {@code s_g²} of a flipped group as in {@link SignFlipInterval}, each draw gives
 * {@code T = max_b |m_1 - m_2|/√(s_1² + s_2²)}, Welch's statistic; {@code q} is the order statistic
 * of rank {@code ⌈(1-α)·R⌉}. Flipping whole curves keeps the dependence between bands, and the
 * groups may scatter differently; that differences are distributed symmetrically about their means
 * is assumed.
 *
 * <p>A band counts where both groups have two units or more and scatter. Where all residuals of
 * both groups line up, {@code T} is infinite; the caller bounds {@code q} by Bonferroni's quantile.
 *
 * <p>Sources: those of {@link SignFlipInterval}; Welch 1947, Biometrika 34:28.
 */
public final class TwoSampleSignFlip {
  private static final int DRAWS = 4999;
  private static final double RELATIVE_ZERO = 1e-12;

  private final double confidence;
  private final long seed;

  private TwoSampleSignFlip(double confidence, long seed) {
    this.confidence = confidence;
    this.seed = seed;
  }

  /** The procedure at 95 %, with 4999 draws, seed 1. */
  public static TwoSampleSignFlip withDefaults() {
    return new TwoSampleSignFlip(0.95, 1);
  }

  /**
   * The same procedure at another confidence.
   *
   * @param level strictly between 0 and 1
   */
  public TwoSampleSignFlip withConfidence(double level) {
    return new TwoSampleSignFlip(Checks.fraction(level, "confidence"), seed);
  }

  /** The same procedure with another seed. */
  public TwoSampleSignFlip withSeed(long value) {
    return new TwoSampleSignFlip(confidence, value);
  }

  /**
   * The multiplier over all bands.
   *
   * @param first one row per unit, one column per band, NaN where the unit has no level
   * @param second the same of the other group, over the same bands
   * @return {@code q}; 0 when no band counts
   */
  public double fit(double[][] first, double[][] second) {
    if (first.length < 2 || second.length < 2) {
      throw new IllegalArgumentException(
          "each group needs two or more units, but they have "
              + first.length
              + " and "
              + second.length);
    }
    SplittableRandom random = new SplittableRandom(seed);
    Flipped one = Flipped.of(first, random);
    Flipped two = Flipped.of(second, random);
    double[] greatest = new double[DRAWS];
    Arrays.setAll(greatest, r -> greatestT(one, two, r));
    Arrays.sort(greatest);
    // Rank ⌈(1-α)R⌉; a hair is taken off so that it does not rise by rounding.
    int rank = (int) Math.ceil(confidence * DRAWS - 1e-9);
    return greatest[Math.max(rank, 1) - 1];
  }

  private static double greatestT(Flipped one, Flipped two, int draw) {
    double greatestSquare = 0;
    for (int b = 0; b < one.counts.length; b++) {
      if (one.counts[b] >= 2 && two.counts[b] >= 2 && one.meanSquares[b] + two.meanSquares[b] > 0) {
        double difference = one.mean(draw, b) - two.mean(draw, b);
        double variance = one.variance(draw, b) + two.variance(draw, b);
        boolean none = variance <= RELATIVE_ZERO * (one.meanSquares[b] + two.meanSquares[b]);
        double square = none ? Double.POSITIVE_INFINITY : difference * difference / variance;
        greatestSquare = Math.max(greatestSquare, square);
      }
    }
    return Math.sqrt(greatestSquare);
  }

  /** One group: the sums of its flipped residuals, each band's count and mean square. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Flipped(Matrix sums, int[] counts, double[] meanSquares) {
    static Flipped of(double[][] differences, SplittableRandom random) {
      int bands = differences[0].length;
      double[][] residuals = new double[differences.length][bands];
      int[] counts = new int[bands];
      double[] meanSquares = new double[bands];
      for (int b = 0; b < bands; b++) {
        int column = b;
        double[] present =
            Arrays.stream(differences)
                .mapToDouble(u -> u[column])
                .filter(v -> !Double.isNaN(v))
                .toArray();
        double mean = Arrays.stream(present).sum() / Math.max(1, present.length);
        counts[b] = present.length;
        for (int i = 0; i < differences.length; i++) {
          if (!Double.isNaN(differences[i][b])) {
            residuals[i][b] = differences[i][b] - mean;
            meanSquares[b] += residuals[i][b] * residuals[i][b] / counts[b];
          }
        }
      }
      double[][] signs = new double[DRAWS][differences.length];
      for (double[] pattern : signs) {
        Arrays.setAll(pattern, i -> random.nextBoolean() ? 1 : -1);
      }
      return new Flipped(Matrix.ofRows(signs).times(Matrix.ofRows(residuals)), counts, meanSquares);
    }

    double mean(int draw, int band) {
      return sums.get(draw, band) / counts[band];
    }

    double variance(int draw, int band) {
      double m = mean(draw, band);
      return Math.max(0, meanSquares[band] - m * m) / (counts[band] - 1);
    }
  }
}
