package org.twinrig.doubt;

import java.util.Arrays;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * A kind's curves by unit and band, dB, NaN where a level is missing, with means and variances that
 * leave units out.
 */
final class KindCurves {
  /** Where units hardly differ, files' last digit and what is read off do. */
  private static final double LEAST_VARIANCE = 0.01;

  final PairedUnits paired;
  final Group old;
  final Group difference;
  private final double[][] now;

  KindCurves(PairedUnits paired) {
    this.paired = paired;
    int reach = reach(paired.grid());
    double[][] from = arrays(paired.from().means());
    now = arrays(paired.to().means());
    double[][] differences = new double[from.length][];
    Arrays.setAll(differences, u -> minus(now[u], from[u]));
    old = new Group(from, reach);
    difference = new Group(differences, reach);
  }

  int size() {
    return paired.units().size();
  }

  double[] now(int unit) {
    return now[unit];
  }

  private static double[][] arrays(List<Levels> levels) {
    return levels.stream().map(KindCurves::array).toArray(double[][]::new);
  }

  static double[] array(Levels levels) {
    double[] db = new double[levels.grid().size()];
    Arrays.setAll(db, b -> levels.level(b).orElse(Double.NaN));
    return db;
  }

  static double[] minus(double[] some, double[] other) {
    double[] difference = new double[some.length];
    Arrays.setAll(difference, b -> some[b] - other[b]);
    return difference;
  }

  /** Mean over bands of {@code x²/s²}; NaN where no band has both. */
  static double distance(double[] curve, double[] variance) {
    double sum = 0;
    int bands = 0;
    for (int b = 0; b < curve.length; b++) {
      double term = curve[b] * curve[b] / variance[b];
      if (!Double.isNaN(term)) {
        sum += term;
        bands++;
      }
    }
    return sum / bands;
  }

  private static int reach(BandGrid grid) {
    return Math.max(1, grid.perOctave() / 3);
  }

  private static double[] smooth(double[] own, int reach) {
    double[] smooth = new double[own.length];
    for (int b = 0; b < own.length; b++) {
      double sum = 0;
      int count = 0;
      for (int k = Math.max(0, b - reach); k <= Math.min(own.length - 1, b + reach); k++) {
        if (!Double.isNaN(own[k])) {
          sum += own[k];
          count++;
        }
      }
      smooth[b] = count == 0 ? Double.NaN : Math.max(LEAST_VARIANCE, sum / count);
    }
    return smooth;
  }

  /** Curves of one sort, with their sums. */
  static final class Group {
    final double[][] curves;
    private final int reach;
    private final double[] counts;
    private final double[] sums;
    private final double[] squares;

    Group(double[][] curves, int reach) {
      this.curves = curves;
      this.reach = reach;
      int bands = curves[0].length;
      counts = new double[bands];
      sums = new double[bands];
      squares = new double[bands];
      for (double[] curve : curves) {
        for (int b = 0; b < bands; b++) {
          if (!Double.isNaN(curve[b])) {
            counts[b]++;
            sums[b] += curve[b];
            squares[b] += curve[b] * curve[b];
          }
        }
      }
    }

    /** The mean of all but some units; NaN where no other has a level. */
    double[] mean(int... without) {
      double[] mean = new double[sums.length];
      for (int b = 0; b < mean.length; b++) {
        double n = counts[b];
        double sum = sums[b];
        for (int unit : without) {
          double x = curves[unit][b];
          n -= Double.isNaN(x) ? 0 : 1;
          sum -= Double.isNaN(x) ? 0 : x;
        }
        mean[b] = n > 0 ? sum / n : Double.NaN;
      }
      return mean;
    }

    /** The variance of all but some units, averaged over a third of an octave to either side. */
    double[] variance(int... without) {
      double[] own = new double[sums.length];
      for (int b = 0; b < own.length; b++) {
        double n = counts[b];
        double sum = sums[b];
        double square = squares[b];
        for (int unit : without) {
          double x = curves[unit][b];
          n -= Double.isNaN(x) ? 0 : 1;
          sum -= Double.isNaN(x) ? 0 : x;
          square -= Double.isNaN(x) ? 0 : x * x;
        }
        own[b] = n > 1 ? Math.max(0, (square - sum * sum / n) / (n - 1)) : Double.NaN;
      }
      return smooth(own, reach);
    }
  }
}
