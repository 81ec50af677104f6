package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;

/**
 * In which regions as a whole the mean transfer of a kind is shown to make no difference.
 *
 * <p>A region agrees when every band in it does but for those the anchor lines up, so its p value
 * is the largest of its bands' (intersection–union test, Berger 1982, Technometrics 24:295, from
 * memory): the chance of a wrong claim is at most the level, however bands depend on each other.
 * Over all kinds and regions that are tested the values are adjusted after Holm ({@link #holm}).
 *
 * <p>{@code p} that some band of it does not agree, adjusted among all kinds and regions, and
 * whether agreement is shown at the study's confidence.
 */
public record RegionEquivalence(
    String kind, Region region, int bands, double p, double adjustedP, boolean shown) {

  private record Tested(String kind, Region region, int bands, double p) {}

  /**
   * Tests every region of every kind of a study, regions rising; a region with a band that has no
   * estimate is not tested.
   */
  public static List<RegionEquivalence> of(List<Equivalence> kinds, List<BandGrid> grids) {
    List<Tested> tested = new ArrayList<>();
    for (int k = 0; k < kinds.size(); k++) {
      for (Region region : Region.values()) {
        largest(kinds.get(k), region, grids.get(k)).ifPresent(tested::add);
      }
    }
    double[] adjusted = holm(tested.stream().mapToDouble(Tested::p).toArray());
    List<RegionEquivalence> regions = new ArrayList<>();
    for (int k = 0; k < adjusted.length; k++) {
      Tested t = tested.get(k);
      boolean shown = adjusted[k] < 1 - kinds.get(0).confidence();
      regions.add(new RegionEquivalence(t.kind, t.region, t.bands, t.p, adjusted[k], shown));
    }
    return regions;
  }

  private static Optional<Tested> largest(Equivalence kind, Region region, BandGrid grid) {
    double largest = 0;
    int bands = 0;
    for (int b = 0; b < grid.size(); b++) {
      if (region.holds(grid.band(b)) && !kind.anchor().linesUp(grid.band(b))) {
        if (kind.bands().get(b).isEmpty()) {
          return Optional.empty();
        }
        largest = Math.max(largest, kind.bands().get(b).get().p());
        bands++;
      }
    }
    return bands == 0
        ? Optional.empty()
        : Optional.of(new Tested(kind.kind(), region, bands, largest));
  }

  /**
   * Adjusts p values so that the chance of a single wrong claim among several tests stays at the
   * level of one, however the tests depend on each other: the smallest of {@code m} values is
   * multiplied by {@code m}, the next by {@code m-1}, and so on; none may fall below one before it,
   * and none exceeds 1.
   *
   * <p>Source: Holm 1979, Scand. J. Statist. 6:65.
   */
  static double[] holm(double... p) {
    for (double value : p) {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException("a p value lies between 0 and 1, but is " + value);
      }
    }
    int[] rising =
        IntStream.range(0, p.length)
            .boxed()
            .sorted(Comparator.comparingDouble(k -> p[k]))
            .mapToInt(k -> k)
            .toArray();
    double[] adjusted = new double[p.length];
    double least = 0;
    for (int rank = 0; rank < rising.length; rank++) {
      least = Math.max(least, Math.min(1, (p.length - rank) * p[rising[rank]]));
      adjusted[rising[rank]] = least;
    }
    return adjusted;
  }
}
