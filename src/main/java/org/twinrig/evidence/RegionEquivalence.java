package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;

/**
 * In which regions as a whole the mean transfer of a kind is shown to make no difference.
 *
 * <p>A region agrees when every band in it does but for those the anchor lines up, so its p value
 * is the largest of its bands' (intersection–union test, Berger 1982, Technometrics 24:295, from
 * memory): the chance of a wrong claim is at most the level, however bands depend on each other.
 * Over all kinds and regions that are tested the values are adjusted after {@link Holm}.
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
    double[] adjusted = Holm.adjusted(tested.stream().mapToDouble(Tested::p).toArray());
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
}
