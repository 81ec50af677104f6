package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;

/**
 * How units fared that a rule never saw: errors by region and by unit, and how often intervals held
 * them.
 *
 * <p>A region without errors is left out; the empty region stands for all bands.
 */
public record Validation(
    List<RegionErrors> regions,
    Map<Optional<Region>, List<UnitErrors>> units,
    List<Coverage> coverage) {

  /** The regions, then all bands. */
  private static final List<Optional<Region>> PARTS =
      Stream.concat(
              Stream.of(Region.values()).map(Optional::of), Stream.of(Optional.<Region>empty()))
          .toList();

  public Validation {
    regions = List.copyOf(regions);
    units = Map.copyOf(units);
    coverage = List.copyOf(coverage);
  }

  /** Nothing was tried: a validation without rows. */
  public static Validation none() {
    return new Validation(List.of(), Map.of(), List.of());
  }

  /**
   * Sums up trials, one per unit; prediction intervals and intervals of coverages at a confidence.
   */
  public static Validation of(BandGrid grid, List<Trial> trials, double confidence) {
    Judging judging = new Judging(grid);
    List<RegionErrors> regions = new ArrayList<>();
    Map<Optional<Region>, List<UnitErrors>> units = new LinkedHashMap<>();
    List<Coverage> coverage = new ArrayList<>();
    for (Optional<Region> part : PARTS) {
      List<Judging.Tally> ofUnits = judging.ofUnits(part, trials, confidence);
      units.put(part, ofUnits.stream().map(Judging.Tally::ofUnit).toList());
      if (part.isPresent() && !ofUnits.isEmpty()) {
        regions.add(judging.of(part, trials, confidence).ofRegion(part.get()));
      }
      for (double stated : Coverage.STATED) {
        List<Double> shares =
            judging.ofUnits(part, trials, stated).stream()
                .flatMap(t -> t.inside().stream().boxed())
                .toList();
        if (!shares.isEmpty()) {
          coverage.add(Coverage.of(part, stated, shares, confidence));
        }
      }
    }
    return new Validation(regions, units, coverage);
  }

  /**
   * The unit with the greatest root mean square error over a part of the axis (nothing for all
   * bands), the first of equals.
   */
  public Optional<UnitErrors> worst(Optional<Region> part) {
    return units.getOrDefault(part, List.of()).stream()
        .max(Comparator.comparingDouble(UnitErrors::rmsDb));
  }

  /**
   * Coverage over a part of the axis (nothing for all bands), one per stated confidence, rising.
   */
  public List<Coverage> coverage(Optional<Region> part) {
    List<Coverage> rows = new ArrayList<>(coverage);
    rows.removeIf(c -> !c.region().equals(part));
    return rows;
  }
}
