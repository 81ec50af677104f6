package org.twinrig.proof;

import java.util.SplittableRandom;

/**
 * Random numbers that depend on a seed and on what they are for, never on the order in which things
 * are drawn or on the number of threads.
 */
final class Chance {
  private final SplittableRandom random;

  private Chance(SplittableRandom random) {
    this.random = random;
  }

  /** The stream of what the keys say, such as study, kind, unit and seating. */
  static Chance of(long seed, long... keys) {
    long state = mixed(seed);
    for (long key : keys) {
      state = mixed(state ^ mixed(key));
    }
    return new Chance(new SplittableRandom(state));
  }

  /** Neighbouring numbers give unrelated ones. */
  static long mixed(long value) {
    return new SplittableRandom(value).nextLong();
  }

  /** Uniform in the open interval from 0 to 1. */
  double uniform() {
    return ((random.nextLong() >>> 12) + 0.5) * 0x1p-52;
  }

  /** Standard normal; Box and Muller 1958. */
  double gaussian() {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(uniform()));
    return radius * StrictMath.cos(2 * Math.PI * uniform());
  }

  double gaussian(double mean, double sd) {
    return mean + sd * gaussian();
  }

  /** Exponential: 0 or more, long to the right; its standard deviation is its mean. */
  double exponential(double mean) {
    return -mean * StrictMath.log(uniform());
  }

  /**
   * What makes of a normal variate one of Student's t with three degrees of freedom: {@code √(3 /
   * χ²_3)}, never below 0, with heavy tails.
   */
  double heavyFactor() {
    double squares = 0;
    for (int i = 0; i < 3; i++) {
      double z = gaussian();
      squares += z * z;
    }
    return StrictMath.sqrt(3 / squares);
  }
}
