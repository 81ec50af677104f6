package org.twinrig.reliability;

import java.util.Arrays;
import java.util.List;
import org.twinrig.internal.linalg.Matrix;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.response.Levels;

/**
 * The marks of every band in every resample.
 *
 * <p>{@code Σ_i w_i r̃_i²} for all resamples and bands is one matrix product, resamples × units
 * times units × bands; a second one counts the units that have an error.
 */
final class RedrawnMarks {
  private final MarkRule.Ladder[] ladders;
  private final double[] halfDb;
  private final double[] meanSquare;
  private final Matrix squares;
  private final Matrix present;
  private final RedrawnWander wander;
  private final boolean[] wanders;

  RedrawnMarks(
      KindEstimate estimate, MarkRule rule, List<ResonanceWander> wandering, Resamples resamples) {
    List<BandOutcome> bands = estimate.bands();
    int size = bands.size();
    ladders = bands.stream().map(rule::ladder).toArray(MarkRule.Ladder[]::new);
    halfDb = new double[size];
    meanSquare = new double[size];
    wanders = new boolean[size];
    double[][] errorSquares = new double[estimate.units().size()][size];
    double[][] ones = new double[estimate.units().size()][size];
    for (int i = 0; i < ones.length; i++) {
      fill(estimate.errors().get(i), errorSquares[i], ones[i]);
    }
    for (int b = 0; b < size; b++) {
      if (bands.get(b) instanceof BandOutcome.Fitted fitted) {
        halfDb[b] = fitted.prediction().halfDb();
        meanSquare[b] = meanSquare(errorSquares, ones, b);
      }
    }
    Matrix counts = Matrix.ofRows(resamples.counts());
    squares = counts.times(Matrix.ofRows(errorSquares));
    present = counts.times(Matrix.ofRows(ones));
    wander = new RedrawnWander(estimate, wandering, resamples);
  }

  private static void fill(Levels errors, double[] squares, double[] ones) {
    for (int b = 0; b < squares.length; b++) {
      if (errors.has(b)) {
        squares[b] = errors.db(b) * errors.db(b);
        ones[b] = 1;
      }
    }
  }

  private static double meanSquare(double[][] squares, double[][] ones, int b) {
    double sum = 0;
    double count = 0;
    for (int i = 0; i < squares.length; i++) {
      sum += squares[i][b];
      count += ones[i][b];
    }
    if (count == 0) {
      throw new IllegalArgumentException("a band with an estimate needs the errors of its units");
    }
    return sum / count;
  }

  /** Writes the marks of one resample, narrow runs as they are. */
  void write(int resample, Mark[] marks) {
    Arrays.fill(wanders, false);
    wander.flag(resample, wanders);
    for (int b = 0; b < marks.length; b++) {
      marks[b] = mark(resample, b);
    }
  }

  private Mark mark(int resample, int b) {
    double count = present.get(resample, b);
    if (count == 0) {
      return Mark.UNRELIABLE; // no unit of the band was drawn: nothing to judge it by
    }
    // Errors of exactly zero are zero in every resample: the half-width stays.
    double ratio = meanSquare[b] > 0 ? squares.get(resample, b) / count / meanSquare[b] : 1;
    return ladders[b].at(halfDb[b] * Math.sqrt(ratio), wanders[b]);
  }
}
