package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The error budget of a kind over one region of the frequency axis: mean variances over its bands.
 *
 * <p>It has one band or more.
 */
public record RegionBudget(Region region, List<BandBudget> bands) {

  public RegionBudget {
    bands = List.copyOf(bands);
  }

  /** A kind's budget by region; a region without an estimate is left out. */
  public static List<RegionBudget> of(ErrorBudget budget) {
    List<RegionBudget> rows = new ArrayList<>();
    for (Region region : Region.values()) {
      List<BandBudget> inside =
          budget.bands().stream().filter(b -> region.holds(b.band())).toList();
      if (!inside.isEmpty()) {
        rows.add(new RegionBudget(region, inside));
      }
    }
    return rows;
  }

  /** Mean variance of one source over the bands in which it is known, dB²; nothing when in none. */
  public OptionalDouble variance(ErrorSource source) {
    return bands.stream().flatMapToDouble(b -> b.variance(source).stream()).average();
  }

  /**
   * Share of sources together in what is known of the variance, over all bands of the region, 0 to
   * 1; nothing when they are known in no band or there is no variance.
   */
  public OptionalDouble share(ErrorSource... sources) {
    double all = bands.stream().mapToDouble(b -> b.knownOnly().variance()).sum();
    double part = bands.stream().mapToDouble(b -> b.variance(sources).orElse(0)).sum();
    return bands.stream().anyMatch(b -> b.variance(sources).isPresent()) && all > 0
        ? OptionalDouble.of(part / all)
        : OptionalDouble.empty();
  }

  /** Share of both calibrators together: 0 to 1, or nothing when it is not known. */
  public OptionalDouble calibratorShare() {
    return share(ErrorSource.CALIBRATOR_FROM, ErrorSource.CALIBRATOR_TO);
  }

  /** Mean over the bands of what is known of the variance: dB². */
  public double knownVariance() {
    return bands.stream().mapToDouble(b -> b.knownOnly().variance()).average().orElseThrow();
  }

  /** The bands' totals: one per band, or nothing when the calibrators are not known. */
  public Optional<List<UncertaintyBudget>> totals() {
    List<UncertaintyBudget> totals = bands.stream().flatMap(b -> b.total().stream()).toList();
    return totals.size() == bands.size() ? Optional.of(totals) : Optional.empty();
  }
}
