package org.twinrig.study;

import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;

/**
 * A limit in dB: one number for all frequencies, or steps over frequency. Each step holds from its
 * frequency up to that of the next; the first one also holds below its own.
 *
 * @param steps in rising frequency, at least one
 */
public record DbLimit(List<Step> steps) {

  /** One step: from which frequency on, 0 Hz or more, and the limit from there on, dB, above 0. */
  public record Step(double fromHz, double db) {

    public Step {
      Checks.notNegative(fromHz, "from_hz of a limit");
      Checks.positive(db, "a limit in dB");
    }
  }

  public DbLimit {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a limit needs at least one step");
    }
    for (int i = 1; i < steps.size(); i++) {
      if (!(steps.get(i).fromHz() > steps.get(i - 1).fromHz())) {
        throw new IllegalArgumentException("the steps of a limit must rise in frequency");
      }
    }
  }

  /** The same limit in dB, above 0, at all frequencies. */
  public static DbLimit everywhere(double db) {
    return new DbLimit(List.of(new Step(0, db)));
  }

  /** The limit in dB at a frequency above 0 Hz. */
  public double atHz(double hz) {
    Checks.positive(hz, "a frequency in Hz");
    double db = steps.get(0).db();
    for (Step step : steps) {
      if (step.fromHz() <= hz) {
        db = step.db();
      }
    }
    return db;
  }

  /** One number, or its steps: {@code 2.0 dB at first, 1.5 dB from 200 Hz}. */
  public String words() {
    String first = Numbers.fixed(steps.get(0).db(), 1) + " dB";
    String others =
        steps.stream()
            .skip(1)
            .map(s -> Numbers.fixed(s.db(), 1) + " dB from " + Numbers.hertz(s.fromHz()))
            .collect(Collectors.joining(", "));
    return others.isEmpty() ? first : first + " at first, " + others;
  }

  /** The strictest limit at any frequency: dB. */
  public double smallestDb() {
    return steps.stream().mapToDouble(Step::db).min().orElseThrow();
  }
}
