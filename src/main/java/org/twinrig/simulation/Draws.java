package org.twinrig.simulation;

import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;

/**
 * Random numbers that depend on the seed and on what they are for, never on the order in which
 * things are drawn or on the number of threads.
 *
 * <p>The stream of each purpose starts from the seed and the purpose's keys, mixed by the finaliser
 * of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014). Normal variates are quantiles of uniform ones
 * ({@link NormalQuantile}), so that they are the same on every Java release.
 */
final class Draws {
  private final DoubleSupplier uniforms;

  private Draws(DoubleSupplier uniforms) {
    this.uniforms = uniforms;
  }

  /**
   * The stream of one purpose.
   *
   * @param seed the study's seed
   * @param keys what the numbers are for, such as kind, unit, fixture and seating
   */
  static Draws of(long seed, long... keys) {
    long state = mixed(seed);
    for (long key : keys) {
      state = mixed(state ^ mixed(key + 0x9E3779B97F4A7C15L));
    }
    SplittableRandom source = new SplittableRandom(state);
    return new Draws(() -> ((source.nextLong() >>> 12) + 0.5) * 0x1p-52);
  }

  /** The numbers of one member of an evenly spread population; see {@link EvenUniforms}. */
  static Draws even(long seed, long member, int abovePrime) {
    return new Draws(new EvenUniforms(seed, member, abovePrime));
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
