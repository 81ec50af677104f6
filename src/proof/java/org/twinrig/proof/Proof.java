package org.twinrig.proof;

import java.util.List;

/**
 * Tries a promise of the program on simulated studies whose truth is known.
 *
 * @param <R> rows of its table
 */
interface Proof<R> {
  /** Draws all studies and tallies them. */
  List<R> rows(Harness harness);

  /** The columns. */
  Table<R> table();

  /** What a row breaks of the promise, a clause each; nothing when it is kept. */
  List<String> broken(R row);
}
