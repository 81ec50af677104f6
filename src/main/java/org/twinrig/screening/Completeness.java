package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds captures that hold less than the study's bands ask for.
 *
 * <ul>
 *   <li>Few points: inside the study's range, two neighbouring points lie more than 1.5 bands
 *       apart, so that some band has no point of its own and its level is a straight line's, or it
 *       has none ({@link org.twinrig.response.Levels}). The half band allows for points at rounded
 *       mid-band frequencies.
 *   <li>Narrow range: bands without a level, because the capture does not cover them, make up more
 *       than 1/6 octave. One that starts a little late, and so misses the lowest band, is not
 *       accused.
 * </ul>
 *
 * <p>The bounds are our choice: common practice, no source.
 */
final class Completeness {
  private static final double MOST_BANDS_APART = 1.5;
  private static final double MOST_MISSING_OCTAVES = 1.0 / 6;

  private Completeness() {}

  static List<Verdict> of(List<AnchoredCapture> captures) {
    List<Verdict> verdicts = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      points(c, verdicts);
      range(c, verdicts);
    }
    return verdicts;
  }

  private static void points(AnchoredCapture c, List<Verdict> verdicts) {
    BandGrid grid = c.levels().grid();
    Response r = c.capture().response();
    double widest = 1;
    double atHz = 0;
    for (int i = 1; i < r.size(); i++) {
      double below = r.frequencyHz(i - 1);
      double ratio = r.frequencyHz(i) / below;
      if (ratio > widest * (1 + 1e-9)
          && below < grid.upperHz()
          && r.frequencyHz(i) > grid.lowerHz()) {
        widest = ratio;
        atHz = below;
      }
    }
    double gap = Math.log(widest) / Math.log(2);
    double limit = MOST_BANDS_APART / grid.perOctave();
    if (gap > limit) {
      String where = "above " + Numbers.hertz(atHz);
      verdicts.add(Verdict.of(c.entry(), Finding.FEW_POINTS, gap, limit, where));
    }
  }

  private static void range(AnchoredCapture c, List<Verdict> verdicts) {
    BandGrid grid = c.levels().grid();
    Response r = c.capture().response();
    long beyond =
        grid.bands().stream()
            .filter(b -> b.lowerHz() < r.fromHz() || b.upperHz() > r.toHz())
            .count();
    double missing = (double) beyond / grid.perOctave();
    // A band alone may be wider than the bound.
    double limit = Math.max(MOST_MISSING_OCTAVES, 1.0 / grid.perOctave());
    if (missing > limit + 1e-9) {
      String where = Numbers.hertz(r.fromHz()) + " to " + Numbers.hertz(r.toHz()) + " measured";
      verdicts.add(Verdict.of(c.entry(), Finding.NARROW_RANGE, missing, limit, where));
    }
  }
}
