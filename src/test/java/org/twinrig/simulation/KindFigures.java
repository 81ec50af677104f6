package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Side;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * Means and scatter of one kind, worked out from captures as a lab would.
 *
 * @param oldDb levels on the old fixture, unit by band, mean over seatings
 * @param differenceDb new minus old, unit by band
 * @param meanDb mean difference per band
 * @param unitSdDb standard deviation of the difference between units
 * @param seatSdFromDb between seatings on the old fixture
 * @param seatSdToDb between seatings on the new one
 * @param logLeak logarithm of each unit's leak resistance
 */
@SuppressWarnings("ArrayRecordComponent")
record KindFigures(
    double[][] oldDb,
    double[][] differenceDb,
    double[] meanDb,
    double[] unitSdDb,
    double[] seatSdFromDb,
    double[] seatSdToDb,
    double[] logLeak) {

  static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);
  static final Anchor ANCHOR = new Anchor.Range(300, 1000);
  private static final int SEATINGS = 5;

  static KindFigures of(SimulationPlan plan, SimulatedKind kind, int units) {
    SimulatedStudy study =
        plan.withKinds(kind).withUnitsPerKind(units).withSeatings(SEATINGS).withSeed(11).draw();
    List<double[]> levels = new ArrayList<>();
    for (Capture capture : study.captures()) {
      levels.add(anchored(capture.response()));
    }
    double[][] old = new double[units][];
    double[][] difference = new double[units][];
    double[] logLeak = new double[units];
    double[][] seatVariance = new double[2][GRID.size()];
    for (int u = 0; u < units; u++) {
      List<double[]> from = levels.subList(2 * SEATINGS * u, 2 * SEATINGS * u + SEATINGS);
      List<double[]> to = levels.subList(2 * SEATINGS * u + SEATINGS, 2 * SEATINGS * (u + 1));
      old[u] = mean(from);
      difference[u] = mean(to);
      for (int b = 0; b < GRID.size(); b++) {
        difference[u][b] -= old[u][b];
        seatVariance[0][b] += Math.pow(deviation(from, b), 2) / units;
        seatVariance[1][b] += Math.pow(deviation(to, b), 2) / units;
      }
      Specimen specimen = new Specimen(11, kind, u, List.of(Side.M), Specimen.Sampling.INDEPENDENT);
      logLeak[u] = Math.log(specimen.on(SimulatedFixture.head(), Side.M, 1).leakResistance());
    }
    List<double[]> all = List.of(difference);
    double[] sd = new double[GRID.size()];
    double[] seatFrom = new double[GRID.size()];
    double[] seatTo = new double[GRID.size()];
    for (int b = 0; b < sd.length; b++) {
      sd[b] = deviation(all, b);
      seatFrom[b] = Math.sqrt(seatVariance[0][b]);
      seatTo[b] = Math.sqrt(seatVariance[1][b]);
    }
    return new KindFigures(old, difference, mean(all), sd, seatFrom, seatTo, logLeak);
  }

  static double[] anchored(Response response) {
    double anchorDb = ANCHOR.levelOf(response, GRID.perOctave()).orElseThrow();
    double[] levels = new double[GRID.size()];
    Levels bands = Levels.of(response, GRID);
    for (int b = 0; b < levels.length; b++) {
      levels[b] = bands.db(b) - anchorDb;
    }
    return levels;
  }

  /** Root mean square over the bands of a range. */
  static double rms(double[] perBandDb, double fromHz, double toHz) {
    double sum = 0;
    int count = 0;
    for (int b = 0; b < perBandDb.length; b++) {
      double hz = GRID.band(b).midHz();
      if (hz >= fromHz && hz < toHz) {
        sum += perBandDb[b] * perBandDb[b];
        count++;
      }
    }
    return Math.sqrt(sum / count);
  }

  /** Share of the units that differ by more than a level at a frequency. */
  double shareAbove(double hz, double levelDb) {
    int band = band(hz);
    int above = 0;
    for (double[] unit : differenceDb) {
      above += unit[band] > levelDb ? 1 : 0;
    }
    return above / (double) differenceDb.length;
  }

  /** Correlation of the difference at a frequency with the logarithm of the leak resistance. */
  double correlationWithLogLeak(double hz) {
    return correlation(column(differenceDb, band(hz)), logLeak);
  }

  /**
   * Share of the variance of the difference at a frequency that is explained, by successive
   * projection, by the levels on the old fixture in nearby bands.
   */
  double explainedByOldFixture(double hz, int[] offsets) {
    double[] rest = centred(column(differenceDb, band(hz)));
    double before = dot(rest, rest);
    List<double[]> basis = new ArrayList<>();
    for (int offset : offsets) {
      double[] direction = centred(column(oldDb, band(hz) + offset));
      basis.forEach(known -> remove(direction, known));
      remove(rest, direction);
      basis.add(direction);
    }
    return 1 - dot(rest, rest) / before;
  }

  private static int band(double hz) {
    int band = 0;
    while (GRID.band(band).upperHz() <= hz) {
      band++;
    }
    return band;
  }

  private static double[] column(double[][] table, int band) {
    double[] column = new double[table.length];
    for (int u = 0; u < column.length; u++) {
      column[u] = table[u][band];
    }
    return column;
  }

  private static double[] centred(double[] values) {
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    double[] centred = values.clone();
    for (int i = 0; i < centred.length; i++) {
      centred[i] -= mean;
    }
    return centred;
  }

  private static void remove(double[] from, double[] direction) {
    double share = dot(from, direction) / dot(direction, direction);
    for (int i = 0; i < from.length; i++) {
      from[i] -= share * direction[i];
    }
  }

  private static double correlation(double[] x, double[] y) {
    double[] cx = centred(x);
    double[] cy = centred(y);
    return dot(cx, cy) / Math.sqrt(dot(cx, cx) * dot(cy, cy));
  }

  private static double dot(double[] x, double[] y) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += x[i] * y[i];
    }
    return sum;
  }

  private static double[] mean(List<double[]> rows) {
    double[] mean = new double[rows.get(0).length];
    for (double[] row : rows) {
      for (int b = 0; b < mean.length; b++) {
        mean[b] += row[b] / rows.size();
      }
    }
    return mean;
  }

  private static double deviation(List<double[]> rows, int band) {
    double mean = 0;
    for (double[] row : rows) {
      mean += row[band] / rows.size();
    }
    double sum = 0;
    for (double[] row : rows) {
      sum += Math.pow(row[band] - mean, 2);
    }
    return Math.sqrt(sum / (rows.size() - 1));
  }
}
