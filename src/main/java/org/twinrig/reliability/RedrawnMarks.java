package org.twinrig.reliability;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
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
  private final double confidence;
  private final Map<Double, Double> quantiles = new HashMap<>();

  /** Mean squares of errors of the resample being written. */
  private final double[] meanSquares;

  private final Matrix squares;
  private final Matrix totals;

  /** For each band, the column of its units in the totals. */
  private final int[] column;

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
    ladders = bands.stream().map(rule::ladder).toArray(MarkRule.Ladder[]::new);
    meanSquares = new double[size];
    int[] units = new int[size];
    wanders = new boolean[size];
    double[][] errorSquares = new double[estimate.units().size()][size];
    Map<BitSet, Integer> columns = new LinkedHashMap<>();
    column = new int[size];
    for (int b = 0; b < size; b++) {
      BitSet members = members(estimate, b);
      column[b] = columns.computeIfAbsent(members, m -> columns.size());
      for (int i = members.nextSetBit(0); i >= 0; i = members.nextSetBit(i + 1)) {
        double errorDb = estimate.errors().get(i).db(b);
        errorSquares[i][b] = errorDb * errorDb;
      }
      boolean fitted = bands.get(b) instanceof BandOutcome.Fitted;
      units[b] = fitted ? atLeastOne(members.cardinality()) : 0;
    }
    Matrix counts = Matrix.ofRows(resamples.counts());
    squares = counts.times(Matrix.ofRows(errorSquares));
    totals = counts.times(ones(columns.keySet(), errorSquares.length));
    this.variances = new ErrorVariance.Bands(units, estimate.grid().perOctave());
    this.confidence = confidence;
    this.grid = estimate.grid();
    this.resamples = resamples;
    this.wandering = wandering.stream().map(w -> Wandering.of(w, estimate.units())).toList();
  }

  /** The units that have an error at a band. */
  private static BitSet members(KindEstimate estimate, int b) {
    BitSet members = new BitSet();
    for (int i = 0; i < estimate.units().size(); i++) {
      members.set(i, estimate.errors().get(i).has(b));
    }
    return members;
  }

  private static int atLeastOne(int units) {
    if (units == 0) {
      throw new IllegalArgumentException("a band with an estimate needs the errors of its units");
    }
    return units;
  }

  /** One column per set of units, 1 where a unit belongs to it. */
  private static Matrix ones(Set<BitSet> columns, int units) {
    double[][] ones = new double[units][columns.size()];
    int c = 0;
    for (BitSet members : columns) {
      for (int i = 0; i < units; i++) {
        ones[i][c] = members.get(i) ? 1 : 0;
      }
      c++;
    }
    return Matrix.ofRows(ones);
  }

  /** Writes the marks of one resample, narrow runs as they are. */
  void write(int resample, Mark[] marks) {
    Arrays.fill(wanders, false);
    for (Wandering feature : wandering) {
      Optional<ResonanceWander.Range> zone = feature.zone(resamples.counts()[resample]);
      for (int b = 0; b < marks.length && zone.isPresent(); b++) {
        wanders[b] |= MarkRule.overlaps(grid.band(b), zone.get().fromHz(), zone.get().toHz());
      }
    }
    for (int b = 0; b < marks.length; b++) {
      double count = totals.get(resample, column[b]);
      meanSquares[b] = count == 0 ? 0 : squares.get(resample, b) / count;
    }
    ErrorVariance redrawn = variances.of(meanSquares);
    for (int b = 0; b < marks.length; b++) {
      marks[b] = mark(resample, b, redrawn);
    }
  }

  private Mark mark(int resample, int b, ErrorVariance redrawn) {
    double variance = redrawn.variances()[b];
    if (totals.get(resample, column[b]) == 0 || Double.isNaN(variance)) {
      return Mark.UNRELIABLE; // no unit of the band was drawn: nothing to judge it by
    }
    double quantile =
        quantiles.computeIfAbsent(
            redrawn.degreesOfFreedom()[b], f -> StudentT.twoSided(confidence, f));
    return ladders[b].at(quantile * Math.sqrt(variance), wanders[b]);
  }

  /** A notch or peak whose zone is found anew: its units' columns in the resamples. */
  @SuppressWarnings("ArrayRecordComponent") // stays in this file
  private record Wandering(WanderZone zone, int[] columns) {
    static Wandering of(ResonanceWander wander, List<String> units) {
      int[] columns = wander.positions().stream().mapToInt(p -> units.indexOf(p.unit())).toArray();
      for (int k = 0; k < columns.length; k++) {
        if (columns[k] < 0) {
          throw new IllegalArgumentException(
              "the unit " + wander.positions().get(k).unit() + " is none of the estimate's");
        }
      }
      return new Wandering(new WanderZone(wander.positions(), wander.searched()), columns);
    }

    Optional<ResonanceWander.Range> zone(double[] resample) {
      double[] counts = IntStream.of(columns).mapToDouble(c -> resample[c]).toArray();
      // A resample's variance is (n-1)/n of the study's on average; this takes that back.
      return zone.under(counts, counts.length / (counts.length - 1.0));
    }
  }
}
