package org.twinrig.evidence;

import java.util.Arrays;
import java.util.function.DoubleSupplier;
import java.util.function.Function;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.KthSelector;
import org.twinrig.internal.Checks;

/**
 * Propagates distributions through a sum of inputs that are symmetric about 0, after JCGM 101:2008.
 *
 * <p>An input of type A is drawn as {@code u·Z·√(ν/χ²_ν)}, which is the scaled t of 6.4.9; a
 * rectangular one as a uniform number within {@code ±√3·u} (6.4.2). Given all the {@code χ²}, the
 * sum of the normal parts is itself normal, so that one {@code Z} a trial serves them together.
 * That {@code Z} is not drawn but taken from the middles of as many equally probable strata as
 * there are trials, which takes most of the noise out of the quantile.
 *
 * <p>The coverage interval is symmetric about 0, which for a symmetric, single-peaked sum is the
 * shortest one too (7.7); its half-width is the order statistic of rank {@code ⌈pM⌉} of the
 * absolute values. The number of trials {@code M} is fixed, not adaptive.
 *
 * <p>Immutable; the same seed gives the same result on any thread.
 */
final class MonteCarlo {
  /** Enough for the half-width to settle to better than 1 %, and cheap enough for every study. */
  static final int TRIALS = 20_000;

  private final double[] normals;
  private final double confidence;

  /** The procedure at a coverage probability, with so many trials. */
  MonteCarlo(double confidence, int trials) {
    if (trials < 100) {
      throw new IllegalArgumentException("trials must be 100 or more, but are " + trials);
    }
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    this.confidence = Checks.fraction(confidence, "confidence");
    this.normals = new double[trials];
    Arrays.setAll(normals, r -> normal.inverseCumulativeProbability((r + 0.5) / trials));
  }

  int trials() {
    return normals.length;
  }

  /** Standard deviation of the draws and half-width of the interval. */
  record Result(double standardDeviation, double halfWidth) {}

  /**
   * Propagates: given a generator, one draw a trial of the variance of the normal part; half-widths
   * of the rectangular inputs.
   */
  Result run(
      Function<RandomGenerator, DoubleSupplier> normalVariance, double[] halfWidths, long seed) {
    RandomGenerator random = new Well19937c(seed);
    DoubleSupplier variance = normalVariance.apply(random);
    double[] sizes = new double[normals.length];
    double squares = 0;
    for (int r = 0; r < sizes.length; r++) {
      double value = normals[r] * Math.sqrt(variance.getAsDouble());
      for (double a : halfWidths) {
        value += a * (2 * random.nextDouble() - 1);
      }
      squares += value * value;
      sizes[r] = Math.abs(value);
    }
    double deviation = Math.sqrt(squares / sizes.length);
    int rank = (int) Math.ceil(confidence * sizes.length);
    double half = new KthSelector().select(sizes, null, rank - 1);
    return new Result(deviation, half);
  }

  /**
   * How closely two statements of the same uncertainty must agree (7.9.2): with {@code u = c·10^l}
   * and {@code c} a whole number of the wanted significant digits, {@code δ = ½·10^l}.
   */
  static double numericalTolerance(double standardUncertainty, int significantDigits) {
    Checks.positive(standardUncertainty, "a standard uncertainty");
    int exponent = (int) Math.floor(Math.log10(standardUncertainty)) - (significantDigits - 1);
    // 0.96 to one digit is 1, not 10 tenths.
    boolean carries =
        Math.rint(standardUncertainty / Math.pow(10, exponent)) >= Math.pow(10, significantDigits);
    return 0.5 * Math.pow(10, carries ? exponent + 1 : exponent);
  }

  /** Draws of {@code ν/χ²_ν}; 1 where {@code ν} is infinite. */
  static DoubleSupplier varianceFactor(RandomGenerator random, double degreesOfFreedom) {
    if (Double.isInfinite(degreesOfFreedom)) {
      return () -> 1;
    }
    GammaDistribution half = new GammaDistribution(random, degreesOfFreedom / 2, 1);
    return () -> degreesOfFreedom / (2 * half.sample());
  }
}
