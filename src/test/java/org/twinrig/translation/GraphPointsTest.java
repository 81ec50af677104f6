package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/** Graphs on their own frequencies against the band levels they stand for. */
class GraphPointsTest {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);

  /** A curve of a point every 1/48 octave with a notch, and random detail. */
  private static Response graph(long seed, double fromHz, double toHz) {
    Random random = new Random(seed);
    double notchHz = 2000 * Math.pow(2, 3 * random.nextDouble());
    int points = (int) (48 * Math.log(toHz / fromHz) / Math.log(2)) + 2;
    double[] hz = new double[points];
    double[] db = new double[points];
    double detail = 0;
    for (int k = 0; k < points; k++) {
      hz[k] = fromHz * Math.pow(toHz / fromHz, k / (points - 1.0));
      double octaves = Math.log(hz[k] / notchHz) / Math.log(2);
      detail = 0.9 * detail + 0.2 * random.nextGaussian();
      db[k] = 80 + detail - 12 / (1 + 100 * octaves * octaves);
    }
    return Response.copyOf(hz, db);
  }

  /** Bands whose correction walks by 0.7 dB from one to the next; some are left out. */
  private static TranslatedGraph translated(Response graph, long seed, List<Integer> without) {
    Random random = new Random(seed);
    Levels old = Levels.of(graph, GRID);
    List<TranslatedBand> bands = new ArrayList<>();
    double correction = 3;
    for (int b = 0; b < GRID.size(); b++) {
      correction += 0.7 * random.nextGaussian();
      TranslatedBand.Reach reach = new TranslatedBand.Reach(1 + 0.01 * b, 7);
      OptionalDouble level = old.level(b);
      boolean there = level.isPresent() && !without.contains(b);
      bands.add(
          there
              ? new TranslatedBand(
                  GRID.band(b),
                  level,
                  Optional.of(
                      new TranslatedBand.Predicted(
                          level.getAsDouble() + correction, 0, reach, reach)),
                  b % 2 == 0 ? Mark.RELIABLE : Mark.CAUTION,
                  b % 2 == 0 ? List.of() : List.of(Reason.WIDE_PREDICTION))
              : new TranslatedBand(
                  GRID.band(b), level, Optional.empty(), Mark.UNRELIABLE, List.of(Reason.NO_DATA)));
    }
    return new TranslatedGraph(CatalogueEntry.raw("a", "in-ear", 1), bands, Treatment.RAW);
  }

  /** The band levels of what a lab publishes are those of the table, to 0.05 dB. */
  @Property(tries = 40)
  void bandLevelsOfThePointsAreThoseOfTheBands(@ForAll @IntRange(min = 0, max = 100_000) int seed) {
    Response graph = graph(seed, 18, 22_000);
    TranslatedGraph translated = translated(graph, seed + 1, List.of());
    GraphPoints points = GraphPoints.of(translated, graph);
    assertEquals(graph.size(), points.points().size());
    List<GraphPoints.Point> said =
        points.points().stream().filter(p -> p.said().isPresent()).toList();
    Levels levels =
        Levels.of(
            Response.copyOf(
                said.stream().mapToDouble(GraphPoints.Point::frequencyHz).toArray(),
                said.stream().mapToDouble(p -> p.said().orElseThrow().levelDb()).toArray()),
            GRID);
    // The outermost bands reach beyond the outermost points inside them.
    for (int b = 1; b < GRID.size() - 1; b++) {
      assertEquals(
          translated.bands().get(b).predicted().orElseThrow().toDb(), levels.db(b), 0.05, "" + b);
    }
  }

  /** Between bands nothing rings: the correction stays near those of the bands about it. */
  @Property(tries = 20)
  void theCorrectionDoesNotRing(@ForAll @IntRange(min = 0, max = 100_000) int seed) {
    Response graph = graph(seed, 18, 22_000);
    TranslatedGraph translated = translated(graph, seed + 1, List.of());
    List<GraphPoints.Point> points = GraphPoints.of(translated, graph).points();
    for (int k = 0; k < points.size(); k++) {
      double hz = points.get(k).frequencyHz();
      double level = graph.levelDb(k);
      if (points.get(k).said().isPresent()) {
        double[] near =
            translated.bands().stream()
                .filter(b -> Math.abs(Math.log(b.band().midHz() / hz) / Math.log(2)) < 2.1 / 12)
                .mapToDouble(b -> b.predicted().orElseThrow().toDb() - b.fromDb().orElseThrow())
                .toArray();
        double least = Arrays.stream(near).min().orElseThrow();
        double most = Arrays.stream(near).max().orElseThrow();
        double correction = points.get(k).said().orElseThrow().levelDb() - level;
        double slack = 0.5 + 0.5 * (most - least);
        assertTrue(
            correction > least - slack && correction < most + slack,
            correction + " at " + hz + " Hz, bands " + least + " to " + most);
      }
    }
  }

  /** One correction for all bands is that of every point. */
  @Test
  void aConstantCorrectionIsAdded() {
    Response graph = graph(3, 18, 22_000);
    Levels old = Levels.of(graph, GRID);
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < GRID.size(); b++) {
      TranslatedBand.Reach reach = new TranslatedBand.Reach(1.5, 7);
      bands.add(
          new TranslatedBand(
              GRID.band(b),
              old.level(b),
              Optional.of(new TranslatedBand.Predicted(old.db(b) + 2.5, 0, reach, reach)),
              Mark.RELIABLE,
              List.of()));
    }
    TranslatedGraph translated =
        new TranslatedGraph(CatalogueEntry.raw("a", "in-ear", 1), bands, Treatment.RAW);
    for (GraphPoints.Point p : GraphPoints.of(translated, graph).points()) {
      boolean inside = p.frequencyHz() >= GRID.lowerHz() && p.frequencyHz() <= GRID.upperHz();
      assertEquals(inside, p.said().isPresent());
      p.said()
          .ifPresent(
              s -> {
                double came = graph.levelAt(p.frequencyHz()).orElseThrow();
                assertEquals(came + 2.5, s.levelDb(), 1e-9);
                assertEquals(1.5, s.halfDb(), 1e-12);
              });
    }
  }

  /** Nothing is said inside bands without a level, nor where the graph has no band. */
  @Test
  void bandsWithoutALevelStayEmpty() {
    Response graph = graph(5, 90, 15_000);
    TranslatedGraph translated = translated(graph, 6, List.of(60, 61, 62));
    for (GraphPoints.Point p : GraphPoints.of(translated, graph).points()) {
      Optional<TranslatedBand> band =
          translated.bands().stream()
              .filter(
                  b -> b.band().lowerHz() < p.frequencyHz() && p.frequencyHz() < b.band().upperHz())
              .findFirst();
      boolean said = band.isPresent() && band.get().predicted().isPresent();
      assertEquals(said, p.said().isPresent(), "at " + p.frequencyHz() + " Hz");
      if (said) {
        assertEquals(band.get().mark(), p.said().orElseThrow().mark());
      }
    }
  }
}
