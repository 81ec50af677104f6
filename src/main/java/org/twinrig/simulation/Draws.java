package org.twinrig.simulation;

import java.util.PrimitiveIterator;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;

/**
 * Random numbers that depend on the seed and on what they are for, never on the order in which
 * things are drawn or on the number of threads.
 *
 * <p>The stream of each purpose starts from the seed and the purpose's keys, mixed by the finaliser
 * of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014). Normal variates are quantiles of uniform ones
 * ({@link NormalQuantile}), so that they are the same on every Java release.
 */
final class Draws {
  private static final double EDGE = 1e-12;

  private final DoubleSupplier uniforms;

  private Draws(DoubleSupplier uniforms) {
    this.uniforms = uniforms;
  }

  /** The stream of what the keys say, such as kind, unit, fixture and seating. */
  static Draws of(long seed, long... keys) {
    long state = mixed(seed);
    for (long key : keys) {
      state = mixed(state ^ mixed(key + 0x9E3779B97F4A7C15L));
    }
    SplittableRandom source = new SplittableRandom(state);
    return new Draws(() -> ((source.nextLong() >>> 12) + 0.5) * 0x1p-52);
  }

  /**
   * Uniform numbers that fill their cube evenly over the members of a population, so that a mean
   * over the members settles faster than with random ones: a Kronecker sequence, coordinate {@code
   * j} of member {@code n} being {@code frac(shift_j + n·√p_j)} with {@code p_j} the j-th prime
   * (Niederreiter, Bull. Amer. Math. Soc. 84 (1978), 957-1041) and a random shift (Cranley and
   * Patterson, SIAM J. Numer. Anal. 13 (1976), 904-914).
   *
   * @param seed of the shifts
   * @param above the first prime used is the first above this; streams of different purposes start
   *     far apart
   */
  static Draws even(long seed, long member, int above) {
    PrimitiveIterator.OfInt primes =
        IntStream.iterate(above + 1, p -> p + 1).filter(Draws::isPrime).iterator();
    PrimitiveIterator.OfInt dimensions = IntStream.iterate(0, j -> j + 1).iterator();
    return new Draws(
        () -> {
          int prime = primes.nextInt();
          double shift = of(seed, prime, dimensions.nextInt()).uniform();
          double step = StrictMath.sqrt(prime);
          double place = shift + member * (step - Math.floor(step));
          return Math.max(EDGE, Math.min(1 - EDGE, place - Math.floor(place)));
        });
  }

  private static boolean isPrime(int number) {
    for (int divisor = 2; divisor * divisor <= number; divisor++) {
      if (number % divisor == 0) {
        return false;
      }
    }
    return number > 1;
  }

  private static long mixed(long value) {
    long z = value + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  /** Uniform in the open interval from 0 to 1. */
  double uniform() {
    return uniforms.getAsDouble();
  }

  double between(double from, double to) {
    return from + (to - from) * uniform();
  }

  /** Whole number from 0 to {@code bound - 1}. */
  int below(int bound) {
    return (int) Math.floor(uniform() * bound);
  }

  /** Standard normal, held within ±3.5 so that no part is ever made outside what exists. */
  double gaussian() {
    return Math.max(-3.5, Math.min(3.5, NormalQuantile.of(uniform())));
  }

  double gaussian(double mean, double sd) {
    return mean + sd * gaussian();
  }

  /** Log-normal: median times {@code e^(sd·z)}. */
  double logNormal(double median, double sdNepers) {
    return median * StrictMath.exp(sdNepers * gaussian());
  }

  boolean chance(double probability) {
    return uniform() < probability;
  }
}
