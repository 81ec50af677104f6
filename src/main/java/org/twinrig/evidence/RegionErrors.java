package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Levels;

/**
 * The errors made on units that did not enter, over one region of the frequency axis.
 *
 * @param region the region
 * @param units how many units have an error in it
 * @param biasDb mean error over units and bands, measured minus predicted, dB
 * @param rmsOffsetDb root mean square error of the plain offset, dB
 * @param rmsDb root mean square error of the model, its choice included, dB
 * @param coverage share of errors inside the prediction interval; nothing where every band has
 *     fewer than four units
 */
public record RegionErrors(
    Region region,
    int units,
    double biasDb,
    double rmsOffsetDb,
    double rmsDb,
    OptionalDouble coverage) {

  /** Refuses anything that is not a number. */
  public RegionErrors {
    Checks.finite(biasDb, "bias_db");
    Checks.notNegative(rmsOffsetDb, "rms_offset_db");
    Checks.notNegative(rmsDb, "rms_db");
    Objects.requireNonNull(coverage, "coverage");
  }

  /**
   * The errors of one kind in every region that has any.
   *
   * <p>Coverage is honest: the interval that unit {@code i} is held against, {@code
   * t_{n-2}·√(Σ_{j≠i} r̃_j²/(n-1))}, is made from the errors of the others. A band needs four units
   * for that; with three it counts in the errors but not in the coverage.
   *
   * @param estimate the kind's estimate with its errors
   * @param confidence of the prediction interval
   * @return in the order of {@link Region}; a region without errors is left out
   */
  public static List<RegionErrors> of(KindEstimate estimate, double confidence) {
    List<RegionErrors> rows = new ArrayList<>();
    for (Region region : Region.values()) {
      Tally tally = new Tally(estimate, confidence);
      for (int b = 0; b < estimate.grid().size(); b++) {
        if (region.holds(estimate.grid().band(b))) {
          tally.add(b);
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
    private final KindEstimate estimate;
    private final double confidence;
    private final boolean[] seen;
    private int errors;
    private double sum;
    private double squares;
    private double offsetSquares;
    private int judged;
    private int inside;

    Tally(KindEstimate estimate, double confidence) {
      this.estimate = estimate;
      this.confidence = confidence;
      this.seen = new boolean[estimate.units().size()];
    }

    void add(int b) {
      double bandSquares = 0;
      int n = 0;
      for (int i = 0; i < seen.length; i++) {
        Levels curve = estimate.errors().get(i);
        if (curve.has(b)) {
          double error = curve.db(b);
          double offset = estimate.offsetErrors().get(i).db(b);
          seen[i] = true;
          sum += error;
          squares += error * error;
          offsetSquares += offset * offset;
          bandSquares += error * error;
          n++;
        }
      }
      errors += n;
      if (n >= 4) {
        judge(b, n, bandSquares);
      }
    }

    private void judge(int b, int n, double bandSquares) {
      double t = StudentT.twoSided(confidence, n - 2);
      for (int i = 0; i < seen.length; i++) {
        Levels curve = estimate.errors().get(i);
        if (curve.has(b)) {
          double own = curve.db(b) * curve.db(b);
          double half = t * Math.sqrt(Math.max(0, bandSquares - own) / (n - 1));
          judged++;
          if (Math.abs(curve.db(b)) <= half) {
            inside++;
          }
        }
      }
    }

    RegionErrors row(Region region) {
      int units = 0;
      for (boolean one : seen) {
        units += one ? 1 : 0;
      }
      return new RegionErrors(
          region,
          units,
          sum / errors,
          Math.sqrt(offsetSquares / errors),
          Math.sqrt(squares / errors),
          judged == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) inside / judged));
    }
  }
}
