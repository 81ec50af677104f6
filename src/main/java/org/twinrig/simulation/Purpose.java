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

  Draws draws(long seed, long... keys) {
    long[] all = new long[keys.length + 1];
    all[0] = name().hashCode();
    System.arraycopy(keys, 0, all, 1, keys.length);
    return Draws.of(seed, all);
  }
}
