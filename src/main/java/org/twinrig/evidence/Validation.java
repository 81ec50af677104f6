package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.StudentT;

/**
 * How units fared that a rule never saw: errors by region and by unit, and how often intervals held
 * them.
 *
 * <p>Regions rise, all bands come last; one without errors is left out; the empty region stands for
 * all bands.
 */
public record Validation(
    List<PredictionErrors> regions, List<PredictionErrors> units, List<Coverage> coverage) {

  /** The regions, then all bands. */
  private static final List<Optional<Region>> PARTS =
      Stream.concat(
              Stream.of(Region.values()).map(Optional::of), Stream.of(Optional.<Region>empty()))
          .toList();

  public Validation {
    regions = List.copyOf(regions);
    units = List.copyOf(units);
    coverage = List.copyOf(coverage);
  }

  /**
   * Sums up trials, one per unit; prediction intervals and intervals of coverages at a confidence.
   */
  public static Validation of(BandGrid grid, List<Trial> trials, double confidence) {
    Judge judge = new Judge(grid, trials);
    List<PredictionErrors> regions = new ArrayList<>();
    List<PredictionErrors> units = new ArrayList<>();
    List<Coverage> coverage = new ArrayList<>();
    for (Optional<Region> part : PARTS) {
      units.addAll(judge.ofUnits(part, confidence));
      if (part.isPresent()) {
        judge.errors(part, trials, confidence).ifPresent(regions::add);
      }
      for (double stated : Coverage.STATED) {
        List<Double> shares =
            judge.ofUnits(part, stated).stream().flatMap(u -> u.inside().stream().boxed()).toList();
        if (!shares.isEmpty()) {
          coverage.add(Coverage.of(part, stated, shares, confidence));
        }
      }
    }
    return new Validation(regions, units, coverage);
  }

  /** The errors of each unit that has any over a part of the axis; nothing for all bands. */
  public List<PredictionErrors> ofUnits(Optional<Region> part) {
    return units.stream().filter(u -> u.region().equals(part)).toList();
  }

  /**
   * The unit with the greatest root mean square error over a part of the axis (nothing for all
   * bands), the first of equals.
   */
  public Optional<PredictionErrors> worst(Optional<Region> part) {
    return ofUnits(part).stream().max(Comparator.comparingDouble(PredictionErrors::rmsDb));
  }

  /**
   * Coverage over a part of the axis (nothing for all bands), one per stated confidence, rising.
   */
  public List<Coverage> coverage(Optional<Region> part) {
    return coverage.stream().filter(c -> c.region().equals(part)).toList();
  }

  /** An error at one band, and whether its interval holds it, where it has one. */
  private record Miss(
      String unit, double errorDb, double offsetErrorDb, Optional<Boolean> inside) {}

  /** Holds trials against their intervals, part by part of the frequency axis. */
  private static final class Judge {
    private final BandGrid grid;
    private final List<Trial> trials;
    private final Map<Double, StudentT.Quantiles> quantiles = new HashMap<>();

    Judge(BandGrid grid, List<Trial> trials) {
      this.grid = grid;
      this.trials = trials;
    }

    /** The errors of each unit that has any in a part. */
    List<PredictionErrors> ofUnits(Optional<Region> part, double stated) {
      return trials.stream().flatMap(t -> errors(part, List.of(t), stated).stream()).toList();
    }

    /** All errors in a part together, held against intervals of a stated confidence. */
    Optional<PredictionErrors> errors(Optional<Region> part, List<Trial> of, double stated) {
      List<Miss> misses =
          of.stream()
              .flatMap(
                  trial ->
                      IntStream.range(0, grid.size())
                          .filter(b -> part.isEmpty() || part.get().holds(grid.band(b)))
                          .filter(trial.errors()::has)
                          .mapToObj(b -> miss(trial, b, stated)))
              .toList();
      return misses.isEmpty()
          ? Optional.empty()
          : Optional.of(
              new PredictionErrors(
                  part,
                  misses.stream().map(Miss::unit).collect(Collectors.toSet()),
                  misses.size(),
                  mean(misses, Miss::errorDb),
                  Math.sqrt(mean(misses, m -> m.offsetErrorDb * m.offsetErrorDb)),
                  Math.sqrt(mean(misses, m -> m.errorDb * m.errorDb)),
                  misses.stream()
                      .flatMap(m -> m.inside.stream())
                      .mapToDouble(inside -> inside ? 1 : 0)
                      .average()));
    }

    private static double mean(List<Miss> misses, ToDoubleFunction<Miss> value) {
      double sum = 0;
      for (Miss miss : misses) {
        sum += value.applyAsDouble(miss);
      }
      return sum / misses.size();
    }

    private Miss miss(Trial trial, int b, double stated) {
      double errorDb = trial.errors().db(b);
      StudentT.Quantiles t = quantiles.computeIfAbsent(stated, StudentT.Quantiles::new);
      return new Miss(
          trial.unit(),
          errorDb,
          trial.offsetErrors().db(b),
          trial.scale().has(b)
              ? Optional.of(
                  Math.abs(errorDb) <= t.at(trial.degreesOfFreedom().get(b)) * trial.scale().db(b))
              : Optional.empty());
    }
  }
}
