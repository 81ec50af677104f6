package org.twinrig.simulation;

/** What a stream of random numbers is for; its name is the first key of the stream. */
enum Purpose {
  UNIT,
  SIDE,
  FIT,
  SEATING,
  OTHER_SIDE,
  SEAL,
  NOISE,
  ROUTINE,
  TRUTH,
  GRAPH,
  SESSION;

  /**
   * Where the primes of its evenly spread numbers start; no purpose needs as many as lie between.
   */
  int firstPrimeAbove() {
    return switch (this) {
      case UNIT -> 1;
      case SIDE -> 1000;
      default -> 2000;
    };
  }

  Draws draws(long seed, long... keys) {
    long[] all = new long[keys.length + 1];
    all[0] = name().hashCode();
    System.arraycopy(keys, 0, all, 1, keys.length);
    return Draws.of(seed, all);
  }
}
