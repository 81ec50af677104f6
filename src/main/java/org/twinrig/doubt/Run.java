package org.twinrig.doubt;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.response.Levels;

/**
 * A run of bands without a gap.
 *
 * @param from the first band
 * @param to the band after the last
 */
record Run(int from, int to) {
  static final Run WHOLE = new Run(0, Integer.MAX_VALUE);

  /** Whole thirds of an octave at which all of some levels are known; the longest such run. */
  static Optional<Run> common(List<Levels> all) {
    int bands = all.get(0).grid().size();
    int step = Math.max(1, all.get(0).grid().perOctave() / 3);
    Run best = new Run(0, 0);
    int start = 0;
    for (int third = 0; third <= bands / step; third++) {
      int first = third * step;
      boolean known =
          first + step <= bands
              && IntStream.range(first, first + step)
                  .allMatch(b -> all.stream().allMatch(l -> l.has(b)));
      if (!known) {
        best = first - start > best.to - best.from ? new Run(start, first) : best;
        start = first + step;
      }
    }
    return best.to > best.from ? Optional.of(best) : Optional.empty();
  }

  /** Whether levels are known all over it. */
  boolean within(Levels levels) {
    return IntStream.range(from, to).allMatch(levels::has);
  }

  /** Levels averaged over each third of an octave of the run, dB. */
  double[] thirds(Levels levels) {
    int step = Math.max(1, levels.grid().perOctave() / 3);
    double[] means = new double[(to - from) / step];
    for (int b = from; b < to; b++) {
      means[(b - from) / step] += levels.db(b) / step;
    }
    return means;
  }
}
