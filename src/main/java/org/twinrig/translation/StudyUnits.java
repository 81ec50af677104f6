package org.twinrig.translation;

import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.twinrig.regression.BandOutcome;
import org.twinrig.response.Levels;

/**
 * Whether an old graph is like the graphs of the study's units of its kind, over the whole curve:
 * what was learnt from sealed headphones says nothing of leaky ones.
 *
 * <p>At a band the graph is held against the units' levels on the old fixture, pinned to the
 * anchor: {@code |x - x̄|/(s_x·√(1+1/n))} with {@code s_x²} the variance between the units averaged
 * over the bands within 1/6 octave and what old graphs scatter by themselves added, judged at
 * {@code t_{n-1}} with {@code α = 0.01}. A graph with more than a given share of its bands beyond
 * is unlike the study's units, as a whole.
 */
final class StudyUnits {
  /** The share of bands that may be beyond. */
  static final double MOST_BEYOND = 0.1;

  /** Units that differ by less than this do not differ, and nothing can be held against them. */
  private static final double LEAST_SCATTER_DB = 0.01;

  private StudyUnits() {}

  /** Whether a graph is unlike the units of a kind; never where it does not reach the anchor. */
  static boolean unlike(
      OldGraph graph, TransferFunction kind, Intervals intervals, IntToDoubleFunction oldDb) {
    return graph.pinned().isPresent() && beyond(graph, kind, intervals, oldDb) > MOST_BEYOND;
  }

  /** The share of the bands at which a graph lies beyond the units; 0 where there are none. */
  static double beyond(
      OldGraph graph, TransferFunction kind, Intervals intervals, IntToDoubleFunction oldDb) {
    Levels pinned = graph.pinned().orElseThrow();
    int held = 0;
    int beyond = 0;
    for (int b = 0; b < kind.bands().size(); b++) {
      if (pinned.has(b)
          && kind.bands().get(b).outcome() instanceof BandOutcome.Fitted fitted
          && fitted.unitSpread().sdDb() >= LEAST_SCATTER_DB) {
        double carried = graph.carried(b, Optional.empty()).own().standardDb();
        double variance =
            fitted.unitSpread().sdDb() * fitted.unitSpread().sdDb() * (1 + 1.0 / fitted.units())
                + carried * carried
                + oldDb.applyAsDouble(b) * oldDb.applyAsDouble(b);
        double limit = intervals.likeness(fitted.units());
        beyond +=
            Math.abs(pinned.db(b) - fitted.unitSpread().meanDb()) > limit * Math.sqrt(variance)
                ? 1
                : 0;
        held++;
      }
    }
    return held == 0 ? 0 : (double) beyond / held;
  }
}
