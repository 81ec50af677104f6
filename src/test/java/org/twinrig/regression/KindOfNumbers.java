package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** Paired units from bare numbers, one seating each. */
final class KindOfNumbers {
  private KindOfNumbers() {}

  /**
   * Units of a kind.
   *
   * @param x {@code [unit][band]} level on the old fixture, NaN where missing
   * @param d {@code [unit][band]} difference
   * @param perOctave bands per octave
   */
  static PairedUnits of(double[][] x, double[][] d, int perOctave) {
    int bands = x[0].length;
    BandGrid all = BandGrid.covering(1, 40_000, perOctave);
    BandGrid grid = new BandGrid(all.bands().subList(0, bands));
    List<String> names = new ArrayList<>();
    List<Levels> from = new ArrayList<>();
    List<Levels> to = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      names.add("Hazel " + i);
      from.add(Levels.copyOf(grid, x[i]));
      double[] sum = new double[bands];
      for (int b = 0; b < bands; b++) {
        sum[b] = x[i][b] + d[i][b];
      }
      to.add(Levels.copyOf(grid, sum));
    }
    double[] none = new double[bands];
    Arrays.fill(none, Double.NaN);
    Levels unknown = Levels.copyOf(grid, none);
    List<List<Integer>> ones = Collections.nCopies(x.length, Collections.nCopies(bands, 1));
    return new PairedUnits(
        "kind",
        grid,
        names,
        new PairedUnits.OnFixture(from, ones, unknown, from.stream().map(List::of).toList()),
        new PairedUnits.OnFixture(to, ones, unknown, to.stream().map(List::of).toList()));
  }
}
