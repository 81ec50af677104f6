package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.StudentT;

/** Holds trials against their intervals, part by part of the frequency axis. */
final class Judging {
  /** The regions, then all bands. */
  static final List<Optional<Region>> PARTS =
      Stream.concat(
              Stream.of(Region.values()).map(Optional::of), Stream.of(Optional.<Region>empty()))
          .toList();

  private final BandGrid grid;
  private final List<Trial> trials;
  private final Map<Double, Map<Integer, Double>> quantiles = new HashMap<>();

  Judging(BandGrid grid, List<Trial> trials) {
    this.grid = grid;
    this.trials = List.copyOf(trials);
  }

  /** Each unit's share of bands inside; nothing where none of its bands can be judged. */
  List<OptionalDouble> inside(Optional<Region> part, double stated) {
    return trials.stream()
        .map(
            trial -> {
              int judged = 0;
              int inside = 0;
              for (int b = 0; b < grid.size(); b++) {
                if (holds(part, b) && trial.scale().has(b)) {
                  double t = quantile(stated, trial.degreesOfFreedom().get(b));
                  judged++;
                  inside += Math.abs(trial.errors().db(b)) <= t * trial.scale().db(b) ? 1 : 0;
                }
              }
              return judged == 0
                  ? OptionalDouble.empty()
                  : OptionalDouble.of((double) inside / judged);
            })
        .toList();
  }

  private double quantile(double stated, int degreesOfFreedom) {
    return quantiles
        .computeIfAbsent(stated, c -> new HashMap<>())
        .computeIfAbsent(degreesOfFreedom, f -> StudentT.twoSided(stated, f));
  }

  /** The errors of every unit that has some. */
  List<UnitErrors> units(Optional<Region> part, double confidence) {
    List<OptionalDouble> inside = inside(part, confidence);
    List<UnitErrors> units = new ArrayList<>();
    for (int i = 0; i < trials.size(); i++) {
      unit(trials.get(i), part, inside.get(i)).ifPresent(units::add);
    }
    return units;
  }

  private Optional<UnitErrors> unit(Trial trial, Optional<Region> part, OptionalDouble inside) {
    int bands = 0;
    double sum = 0;
    double squares = 0;
    double offsetSquares = 0;
    for (int b = 0; b < grid.size(); b++) {
      if (holds(part, b) && trial.errors().has(b)) {
        double error = trial.errors().db(b);
        double offset = trial.offsetErrors().db(b);
        bands++;
        sum += error;
        squares += error * error;
        offsetSquares += offset * offset;
      }
    }
    return bands == 0
        ? Optional.empty()
        : Optional.of(
            new UnitErrors(
                trial.unit(),
                bands,
                sum / bands,
                Math.sqrt(offsetSquares / bands),
                Math.sqrt(squares / bands),
                inside));
  }

  private boolean holds(Optional<Region> part, int band) {
    return part.isEmpty() || part.get().holds(grid.band(band));
  }
}
