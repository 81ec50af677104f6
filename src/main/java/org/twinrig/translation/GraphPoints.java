package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.twinrig.band.BandGrid;
import org.twinrig.reliability.Mark;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * A re-expressed graph on the frequencies it came with: what a lab publishes in its place.
 *
 * <p>To the graph as it came a correction is added, a cubic spline over log frequency with a knot
 * at the middle of every band that has a level, constant beyond the outermost knots. Knots start
 * from {@code to(b) - from(b)} and are moved by what the band levels of the sum still lack, until
 * these are {@code to(b)} to 0.01 dB. So the graph keeps its detail, and its band levels are those
 * of the table of bands wherever its points are at least as dense as the bands.
 *
 * <p>Half-widths of the interval run straight between the middles of bands; the mark is that of the
 * band a point lies in.
 */
public record GraphPoints(CatalogueEntry.Level level, List<Point> points) {
  private static final double CLOSE_DB = 0.01;
  private static final int MOST_ROUNDS = 10;

  public GraphPoints {
    points = List.copyOf(points);
  }

  /** A point of the graph; nothing is said of it outside the bands that have a level. */
  public record Point(double frequencyHz, Optional<Said> said) {}

  /** Level on the new fixture and half-width of its interval, dB, and how far to trust it. */
  public record Said(double levelDb, double halfDb, Mark mark) {}

  /** The points of a graph: its bands, and the curve it came as. */
  public static GraphPoints of(TranslatedGraph graph, Response came) {
    Said[] said = new Said[came.size()];
    List<TranslatedBand> bands = graph.bands();
    int b = 0;
    while (b < bands.size()) {
      int end = b;
      while (end < bands.size() && bands.get(end).predicted().isPresent()) {
        end++;
      }
      if (end > b) {
        write(bands.subList(b, end), came, said);
      }
      b = Math.max(end, b + 1);
    }
    List<Point> points = new ArrayList<>(said.length);
    for (int k = 0; k < said.length; k++) {
      points.add(new Point(came.frequencyHz(k), Optional.ofNullable(said[k])));
    }
    return new GraphPoints(graph.treatment().level(), points);
  }

  /** Writes what is said of the points inside a run of neighbouring bands with levels. */
  private static void write(List<TranslatedBand> run, Response came, Said[] said) {
    BandGrid grid = new BandGrid(run.stream().map(TranslatedBand::band).toList());
    double[] middles = grid.bands().stream().mapToDouble(b -> Math.log(b.midHz())).toArray();
    double[] halves = run.stream().mapToDouble(b -> b.predicted().get().halfDb()).toArray();
    UnivariateFunction correction = correction(run, grid, middles, came);
    UnivariateFunction half = through(middles, halves, false);
    int b = 0;
    for (int k = 0; k < said.length; k++) {
      double hz = came.frequencyHz(k);
      if (hz >= grid.lowerHz() && hz <= grid.upperHz()) {
        while (b < run.size() - 1 && hz >= run.get(b).band().upperHz()) {
          b++;
        }
        said[k] =
            new Said(
                came.levelDb(k) + correction.value(Math.log(hz)),
                half.value(Math.log(hz)),
                run.get(b).mark());
      }
    }
  }

  private static UnivariateFunction correction(
      List<TranslatedBand> run, BandGrid grid, double[] middles, Response came) {
    Levels now = Levels.of(came, grid);
    double[] knots = new double[run.size()];
    UnivariateFunction correction = u -> 0;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double worst = 0;
      for (int b = 0; b < knots.length; b++) {
        // A band that the graph does not cover by itself can only be left as it is.
        double lacks = now.has(b) ? run.get(b).predicted().orElseThrow().toDb() - now.db(b) : 0;
        knots[b] += lacks;
        worst = Math.max(worst, Math.abs(lacks));
      }
      if (worst <= CLOSE_DB) {
        break;
      }
      correction = through(middles, knots.clone(), true);
      double[] sum = new double[came.size()];
      for (int k = 0; k < sum.length; k++) {
        sum[k] = came.levelDb(k) + correction.value(Math.log(came.frequencyHz(k)));
      }
      now = Levels.of(came.withLevels(sum), grid);
    }
    return correction;
  }

  /** A curve through knots, a spline or straight, constant beyond the outermost ones. */
  private static UnivariateFunction through(double[] places, double[] values, boolean smooth) {
    int last = places.length - 1;
    if (last == 0) {
      return u -> values[0];
    }
    UnivariateFunction inner =
        smooth && last > 1
            ? new SplineInterpolator().interpolate(places, values)
            : new LinearInterpolator().interpolate(places, values);
    return u -> inner.value(Math.min(places[last], Math.max(places[0], u)));
  }
}
