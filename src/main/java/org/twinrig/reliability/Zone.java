package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.Band;

/**
 * A run of adjacent bands with the same mark.
 *
 * @param fromHz lower edge of the first band, Hz
 * @param toHz upper edge of the last band, Hz
 * @param mark their mark
 * @param empty whether the run has no data at all
 * @param reasons the reasons of its bands, in the order of {@link Reason}
 */
public record Zone(double fromHz, double toHz, Mark mark, boolean empty, List<Reason> reasons) {

  /** Runs below this many octaves (in steps of G = 10^0.3) join the worse neighbour. */
  private static final double NARROW_OCTAVES = 1.0 / 6;

  /** Copies the reasons. */
  public Zone {
    reasons = List.copyOf(reasons);
    if (!(0 < fromHz && fromHz < toHz)) {
      throw new IllegalArgumentException("zone edges must satisfy 0 < from < to");
    }
  }

  /**
   * Width of the zone.
   *
   * @return octaves, {@code lb(to/from)}
   */
  public double octaves() {
    return Math.log(toHz / fromHz) / Math.log(2);
  }

  /**
   * The zones of a run of bands.
   *
   * <p>Runs narrower than 1/6 octave join the worse of their neighbours and take its mark. A narrow
   * run that is worse than both its neighbours stands as it is, since joining would hide it, and so
   * does a run without data.
   *
   * @param bands adjacent, rising in frequency
   * @return the zones, rising in frequency, without gaps
   */
  public static List<Zone> of(List<MarkedBand> bands) {
    List<Run> runs = new ArrayList<>();
    for (MarkedBand band : bands) {
      runs.add(new Run(band.mark(), band.empty(), List.of(band)));
    }
    runs = joinAlike(runs);
    for (int narrow = firstNarrow(runs); narrow >= 0; narrow = firstNarrow(runs)) {
      runs.set(narrow, runs.get(narrow).withMark(worseNeighbour(runs, narrow)));
      runs = joinAlike(runs);
    }
    return runs.stream().map(Run::zone).toList();
  }

  /** The first run that is narrow and not worse than every neighbour it has; -1 when none. */
  private static int firstNarrow(List<Run> runs) {
    for (int r = 0; r < runs.size(); r++) {
      Run run = runs.get(r);
      if (!run.empty && run.octaveSteps() < NARROW_OCTAVES - 1e-9) {
        Mark neighbour = worseNeighbour(runs, r);
        if (neighbour.compareTo(run.mark) > 0) {
          return r;
        }
      }
    }
    return -1;
  }

  /** The worse mark among the neighbours that have data; the run's own when it has none. */
  private static Mark worseNeighbour(List<Run> runs, int r) {
    Mark worse = null;
    for (int k : new int[] {r - 1, r + 1}) {
      if (k >= 0 && k < runs.size() && !runs.get(k).empty) {
        worse = worse == null ? runs.get(k).mark : worse.worse(runs.get(k).mark);
      }
    }
    return worse == null ? runs.get(r).mark : worse;
  }

  private static List<Run> joinAlike(List<Run> runs) {
    List<Run> joined = new ArrayList<>();
    for (Run run : runs) {
      int last = joined.size() - 1;
      if (last >= 0 && joined.get(last).mark == run.mark && joined.get(last).empty == run.empty) {
        List<MarkedBand> bands = new ArrayList<>(joined.get(last).bands);
        bands.addAll(run.bands);
        joined.set(last, new Run(run.mark, run.empty, bands));
      } else {
        joined.add(run);
      }
    }
    return joined;
  }

  private record Run(Mark mark, boolean empty, List<MarkedBand> bands) {
    Run withMark(Mark other) {
      return new Run(other, empty, bands);
    }

    double octaveSteps() {
      return (double) bands.size() / bands.get(0).band().perOctave();
    }

    Zone zone() {
      Band first = bands.get(0).band();
      Band last = bands.get(bands.size() - 1).band();
      List<Reason> reasons =
          bands.stream().flatMap(b -> b.reasons().stream()).distinct().sorted().toList();
      return new Zone(first.lowerHz(), last.upperHz(), mark, empty, reasons);
    }
  }
}
