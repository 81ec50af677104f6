package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.StudentT;

/** Holds trials against their intervals, part by part of the frequency axis. */
final class Judging {
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

  /** Sums over bands, of one unit or of several. */
  static final class Tally {
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
