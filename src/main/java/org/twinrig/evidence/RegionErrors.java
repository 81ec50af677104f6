package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Checks;
import org.twinrig.regression.StudentT;

/**
 * The errors made on units that a rule never saw, over one region of the frequency axis. Every band
 * of every unit counts once; what that says about coverage, and what not, stands at {@link
 * Coverage}.
 *
 * @param biasDb mean error over units and bands, measured minus predicted, dB
 * @param rmsOffsetDb root mean square error of the plain offset, dB
 * @param rmsDb root mean square error of the model, its choice included, dB
 * @param coverage share of errors inside the prediction interval; nothing where no band has one
 */
public record RegionErrors(
    Region region,
    int units,
    double biasDb,
    double rmsOffsetDb,
    double rmsDb,
    OptionalDouble coverage) {

  public RegionErrors {
    Checks.finite(biasDb, "bias_db");
    Checks.notNegative(rmsOffsetDb, "rms_offset_db");
    Checks.notNegative(rmsDb, "rms_db");
    Objects.requireNonNull(coverage, "coverage");
  }

  /**
   * The errors of trials in every region that has any.
   *
   * @param trials one per unit
   * @param confidence of the prediction interval
   * @return in the order of {@link Region}; a region without errors is left out
   */
  static List<RegionErrors> of(BandGrid grid, List<Trial> trials, double confidence) {
    List<RegionErrors> rows = new ArrayList<>();
    for (Region region : Region.values()) {
      Tally tally = new Tally(confidence);
      for (Trial trial : trials) {
        for (int b = 0; b < grid.size(); b++) {
          if (region.holds(grid.band(b)) && trial.errors().has(b)) {
            tally.add(trial, b);
          }
        }
      }
      if (tally.errors > 0) {
        rows.add(tally.row(region));
      }
    }
    return rows;
  }

  /** Sums over one region. */
  private static final class Tally {
    private final double confidence;
    private final Map<Integer, Double> quantiles = new HashMap<>();
    private final Set<String> seen = new HashSet<>();
    private int errors;
    private double sum;
    private double squares;
    private double offsetSquares;
    private int judged;
    private int inside;

    Tally(double confidence) {
      this.confidence = confidence;
    }

    void add(Trial trial, int b) {
      double error = trial.errors().db(b);
      double offset = trial.offsetErrors().db(b);
      seen.add(trial.unit());
      errors++;
      sum += error;
      squares += error * error;
      offsetSquares += offset * offset;
      if (trial.scale().has(b)) {
        double t =
            quantiles.computeIfAbsent(
                trial.degreesOfFreedom().get(b), f -> StudentT.twoSided(confidence, f));
        judged++;
        inside += Math.abs(error) <= t * trial.scale().db(b) ? 1 : 0;
      }
    }

    RegionErrors row(Region region) {
      return new RegionErrors(
          region,
          seen.size(),
          sum / errors,
          Math.sqrt(offsetSquares / errors),
          Math.sqrt(squares / errors),
          judged == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) inside / judged));
    }
  }
}
