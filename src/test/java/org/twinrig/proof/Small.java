package org.twinrig.proof;

/** Proofs on few studies. */
final class Small {
  private Small() {}

  static Harness harness(int studies, long seed, int threads) {
    return new Harness(studies, seed, threads, Situation.USUAL, told -> {});
  }
}
