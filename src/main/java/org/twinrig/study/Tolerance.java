package org.twinrig.study;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.internal.Checks;

/**
 * How far a translated level may be off: the largest prediction half-width of a reliable band, and
 * of one to be used with caution, nowhere below that; and the mean difference that makes no
 * difference, dB, above 0.
 */
public record Tolerance(DbLimit reliable, DbLimit caution, double equivalenceDb) {

  private static final double LOWEST_HZ = 1;

  public Tolerance {
    Checks.positive(equivalenceDb, "equivalence_db");
    if (outOfOrderHz(reliable, caution).isPresent()) {
      throw new IllegalArgumentException("caution_db must nowhere lie below reliable_db");
    }
  }

  /**
   * The lowest frequency where caution allows less than reliable. Both are constant between the
   * frequencies where either has a step, so only these are tried.
   */
  static OptionalDouble outOfOrderHz(DbLimit reliable, DbLimit caution) {
    return Stream.concat(reliable.steps().stream(), caution.steps().stream())
        .mapToDouble(DbLimit.Step::fromHz)
        .map(hz -> Math.max(hz, LOWEST_HZ))
        .sorted()
        .filter(hz -> reliable.atHz(hz) > caution.atHz(hz))
        .findFirst();
  }
}
