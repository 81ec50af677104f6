package org.twinrig.simulation;

import java.util.function.DoubleSupplier;

/**
 * Uniform numbers that fill their cube evenly over the members of a population, so that a mean over
 * the members settles faster than with random ones: a Kronecker sequence, coordinate {@code j} of
 * member {@code n} being {@code frac(shift_j + n·√p_j)} with {@code p_j} the j-th prime
 * (Niederreiter, Bull. Amer. Math. Soc. 84 (1978), 957-1041) and a random shift (Cranley and
 * Patterson, SIAM J. Numer. Anal. 13 (1976), 904-914).
 */
final class EvenUniforms implements DoubleSupplier {
  private static final double EDGE = 1e-12;

  private final long seed;
  private final long member;
  private int dimension;
  private int prime;

  /**
   * Starts one member's numbers.
   *
   * @param seed of the shifts
   * @param member number of the member
   * @param above the first prime used is the first above this; streams of different purposes start
   *     far apart
   */
  EvenUniforms(long seed, long member, int above) {
    this.seed = seed;
    this.member = member;
    this.prime = above;
  }

  @Override
  public double getAsDouble() {
    prime = nextPrime(prime);
    double shift = Draws.of(seed, prime, dimension++).uniform();
    double step = StrictMath.sqrt(prime);
    double place = shift + member * (step - Math.floor(step));
    return Math.max(EDGE, Math.min(1 - EDGE, place - Math.floor(place)));
  }

  private static int nextPrime(int after) {
    int candidate = after + 1;
    while (!isPrime(candidate)) {
      candidate++;
    }
    return candidate;
  }

  private static boolean isPrime(int number) {
    for (int divisor = 2; divisor * divisor <= number; divisor++) {
      if (number % divisor == 0) {
        return false;
      }
    }
    return number > 1;
  }
}
