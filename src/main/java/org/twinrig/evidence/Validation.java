package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.StudentT;

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
      List<Tally> ofUnits = judging.ofUnits(part, trials, confidence);
      units.put(part, ofUnits.stream().map(Tally::ofUnit).toList());
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

  /** Holds trials against their intervals, part by part of the frequency axis. */
  private static final class Judging {
    private final BandGrid grid;
    private final Map<Double, Map<Integer, Double>> quantiles = new HashMap<>();

    Judging(BandGrid grid) {
      this.grid = grid;
    }

    /** One tally for each trial with an error in a part; nothing for the part is all bands. */
    List<Tally> ofUnits(Optional<Region> part, List<Trial> trials, double stated) {
      List<Tally> tallies = new ArrayList<>();
      for (Trial trial : trials) {
        Tally tally = of(part, List.of(trial), stated);
        if (tally.errors > 0) {
          tallies.add(tally);
        }
      }
      return tallies;
    }

    /** All errors of trials in a part, held against intervals of a stated confidence. */
    Tally of(Optional<Region> part, List<Trial> trials, double stated) {
      Tally tally = new Tally();
      for (Trial trial : trials) {
        for (int b = 0; b < grid.size(); b++) {
          if ((part.isEmpty() || part.get().holds(grid.band(b))) && trial.errors().has(b)) {
            tally.add(trial, b);
            if (trial.scale().has(b)) {
              double half = quantile(stated, trial.degreesOfFreedom().get(b)) * trial.scale().db(b);
              tally.judged++;
              tally.inside += Math.abs(trial.errors().db(b)) <= half ? 1 : 0;
            }
          }
        }
      }
      return tally;
    }

    private double quantile(double stated, int degreesOfFreedom) {
      return quantiles
          .computeIfAbsent(stated, c -> new HashMap<>())
          .computeIfAbsent(degreesOfFreedom, f -> StudentT.twoSided(stated, f));
    }
  }

  /** Sums over bands, of one unit or of several. */
  private static final class Tally {
    private final Set<String> units = new HashSet<>();
    private int errors;
    private double sum;
    private double squares;
    private double offsetSquares;
    private int judged;
    private int inside;

    private void add(Trial trial, int b) {
      double error = trial.errors().db(b);
      double offset = trial.offsetErrors().db(b);
      units.add(trial.unit());
      errors++;
      sum += error;
      squares += error * error;
      offsetSquares += offset * offset;
    }

    /** Share of the judged bands inside their interval; nothing where none can be judged. */
    OptionalDouble inside() {
      return judged == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) inside / judged);
    }

    UnitErrors ofUnit() {
      return new UnitErrors(
          units.iterator().next(),
          errors,
          sum / errors,
          rms(offsetSquares),
          rms(squares),
          inside());
    }

    RegionErrors ofRegion(Region region) {
      return new RegionErrors(
          region, units.size(), sum / errors, rms(offsetSquares), rms(squares), inside());
    }

    private double rms(double squaresDb2) {
      return Math.sqrt(squaresDb2 / errors);
    }
  }
}
