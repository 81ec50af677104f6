package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.KindEstimate;
import org.twinrig.response.Levels;

/**
 * One unit predicted by a rule that never saw its difference.
 *
 * @param unit its name
 * @param errors measured minus predicted, dB per band
 * @param offsetErrors the same for the plain offset
 * @param scale at confidence {@code C} the prediction interval reaches {@code t_ν(C)} times this,
 *     dB; missing where no interval can be made
 * @param degreesOfFreedom {@code ν}, one per band
 */
public record Trial(
    String unit, Levels errors, Levels offsetErrors, Levels scale, List<Integer> degreesOfFreedom) {

  /** With fewer errors at a band none of them can be judged by the others. */
  private static final int FEWEST_JUDGED = 4;

  public Trial {
    degreesOfFreedom = List.copyOf(degreesOfFreedom);
  }

  /**
   * The units of a kind, each left out in turn, in the order of the study.
   *
   * <p>The interval that unit {@code i} is held against, {@code t_{n-2}·√(Σ_{j≠i} r̃_j²/(n-1))}, is
   * made from the errors of the others. A band needs four units for that; with three there are
   * errors and no interval.
   */
  public static List<Trial> leftOut(KindEstimate estimate) {
    BandGrid grid = estimate.grid();
    int[] counts = new int[grid.size()];
    double[] squares = new double[grid.size()];
    for (Levels curve : estimate.errors()) {
      for (int b = 0; b < counts.length; b++) {
        if (curve.has(b)) {
          counts[b]++;
          squares[b] += curve.db(b) * curve.db(b);
        }
      }
    }
    List<Integer> freedom = Arrays.stream(counts).mapToObj(n -> n - 2).toList();
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < estimate.units().size(); i++) {
      Levels errors = estimate.errors().get(i);
      double[] scale = new double[counts.length];
      Arrays.setAll(
          scale,
          b ->
              errors.has(b) && counts[b] >= FEWEST_JUDGED
                  ? Math.sqrt(
                      Math.max(0, squares[b] - errors.db(b) * errors.db(b)) / (counts[b] - 1))
                  : Double.NaN);
      trials.add(
          new Trial(
              estimate.units().get(i),
              errors,
              estimate.offsetErrors().get(i),
              Levels.copyOf(grid, scale),
              freedom));
    }
    return trials;
  }
}
