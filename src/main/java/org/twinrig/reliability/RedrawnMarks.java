package org.twinrig.reliability;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.linalg.Matrix;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.ErrorVariance;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;

/**
 * The marks of every band in every resample.
 *
 * <p>{@code Σ_i w_i r̃_i²} for all resamples and bands is one matrix product, resamples × units
 * times units × bands; a second one counts the units that have an error.
 */
final class RedrawnMarks {
  private final MarkRule.Ladder[] ladders;
  private final ErrorVariance.Bands variances;
  private final StudentT.Quantiles quantiles;

  /** Mean squares of errors of the resample being written. */
  private final double[] meanSquares;

  private final Matrix squares;
  private final Matrix totals;

  private final BandGrid grid;
  private final Resamples resamples;
  private final List<Wandering> wandering;
  private final boolean[] wanders;

  RedrawnMarks(
      KindEstimate estimate,
      MarkRule rule,
      List<ResonanceWander> wandering,
      Resamples resamples,
      double confidence) {
    List<BandOutcome> bands = estimate.bands();
    int size = bands.size();
    double[][] errorSquares = new double[estimate.units().size()][size];
    double[][] present = new double[errorSquares.length][size];
    int[] units = new int[size];
    for (int b = 0; b < size; b++) {
      for (int i = 0; i < present.length; i++) {
        if (estimate.errors().get(i).has(b)) {
          double errorDb = estimate.errors().get(i).db(b);
          errorSquares[i][b] = errorDb * errorDb;
          present[i][b] = 1;
          units[b]++;
        }
      }
      if (!(bands.get(b) instanceof BandOutcome.Fitted)) {
        units[b] = 0;
      } else if (units[b] == 0) {
        throw new IllegalArgumentException("a band with an estimate needs the errors of its units");
      }
    }
    Matrix counts = Matrix.ofRows(resamples.counts());
    this.ladders = bands.stream().map(rule::ladder).toArray(MarkRule.Ladder[]::new);
    this.squares = counts.times(Matrix.ofRows(errorSquares));
    this.totals = counts.times(Matrix.ofRows(present));
    this.meanSquares = new double[size];
    this.wanders = new boolean[size];
    this.variances = new ErrorVariance.Bands(units, estimate.grid().perOctave());
    this.quantiles = new StudentT.Quantiles(confidence);
    this.grid = estimate.grid();
    this.resamples = resamples;
    this.wandering = wandering.stream().map(w -> Wandering.of(w, estimate.units())).toList();
  }

  /** Writes the marks of one resample, narrow runs as they are. */
  void write(int resample, Mark[] marks) {
    Arrays.fill(wanders, false);
    for (Wandering feature : wandering) {
      Optional<FrequencyRange> zone = feature.zone(resamples.counts()[resample]);
      for (int b = 0; b < marks.length && zone.isPresent(); b++) {
        wanders[b] |= MarkRule.overlaps(grid.band(b), zone.get().fromHz(), zone.get().toHz());
      }
    }
    for (int b = 0; b < marks.length; b++) {
      double count = totals.get(resample, b);
      meanSquares[b] = count == 0 ? 0 : squares.get(resample, b) / count;
    }
    ErrorVariance redrawn = variances.of(meanSquares);
    for (int b = 0; b < marks.length; b++) {
      marks[b] = mark(resample, b, redrawn);
    }
  }

  private Mark mark(int resample, int b, ErrorVariance redrawn) {
    double variance = redrawn.variance(b);
    if (totals.get(resample, b) == 0 || Double.isNaN(variance)) {
      return Mark.UNRELIABLE; // no unit of the band was drawn: nothing to judge it by
    }
    double quantile = quantiles.at(redrawn.degreesOfFreedom(b));
    return ladders[b].at(quantile * Math.sqrt(variance), wanders[b]);
  }

  /** A notch or peak whose zone is found anew: its units' columns in the resamples. */
  @SuppressWarnings("ArrayRecordComponent") // stays in this file
  private record Wandering(ResonanceWander wander, int[] columns) {
    static Wandering of(ResonanceWander wander, List<String> units) {
      int[] columns = wander.positions().stream().mapToInt(p -> units.indexOf(p.unit())).toArray();
      for (int k = 0; k < columns.length; k++) {
        if (columns[k] < 0) {
          throw new IllegalArgumentException(
              "the unit " + wander.positions().get(k).unit() + " is none of the estimate's");
        }
      }
      return new Wandering(wander, columns);
    }

    Optional<FrequencyRange> zone(double[] resample) {
      double[] counts = IntStream.of(columns).mapToDouble(c -> resample[c]).toArray();
      // A resample's variance is (n-1)/n of the study's on average; this takes that back.
      return ResonanceWander.zone(
          wander.positions(), wander.searched(), counts, counts.length / (counts.length - 1.0));
    }
  }
}
