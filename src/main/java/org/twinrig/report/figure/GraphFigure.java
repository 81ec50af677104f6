package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** One re-expressed graph with its interval over the old one, as a figure or on a page. */
public final class GraphFigure {
  private static final int ON_A_PAGE = 720;
  private static final int FEW_TICKS_BELOW = 500;

  /** A range above this would make the graph taller than a fifth of a sheet. */
  private static final double TALLEST_AT_25_DB = 20;

  private GraphFigure() {}

  /** Draws a graph; the origin is that of its translation. */
  public static Figure of(TranslatedGraph graph, Translation.Origin origin) {
    double reliable = graph.octaves(Mark.RELIABLE);
    String octaves = reliable == 0 ? "no band" : Numbers.fixed(reliable, 1) + " octaves";
    Plot plot = plot(graph, Axis.frequency(), levels(graph, "Level, dB", 1), origin.from());
    return new Sheet(
            "%s: %s marked reliable".formatted(graph.entry().graph(), octaves),
            "%s, %s; the pale band is where a new measurement is expected"
                .formatted(graph.entry().unit(), graph.entry().kind()),
            origin.fingerprint())
        .overFrequency(plot, Stretch.of(graph))
        .figure(
            Figure.nameOf("graph", graph.entry().graph()),
            "Old graph and re-expressed graph against frequency, with prediction interval and"
                + " marks");
  }

  static Axis levels(TranslatedGraph graph, String words, double roomDb) {
    return Axis.levelsHolding(
        words,
        roomDb,
        old(graph),
        now(graph, TranslatedBand.Predicted::lowDb),
        now(graph, TranslatedBand.Predicted::highDb));
  }

  static Plot plot(TranslatedGraph graph, Axis across, Axis up, String oldFixture) {
    double[] hz = Values.of(graph.bands(), b -> b.band().midHz());
    return new Plot(across, up, false)
        .area(
            hz,
            now(graph, TranslatedBand.Predicted::lowDb),
            now(graph, TranslatedBand.Predicted::highDb),
            "prediction interval")
        .line(hz, old(graph), Ink.OLD, "old: " + oldFixture)
        .line(hz, now(graph, TranslatedBand.Predicted::toDb), Ink.NEW, "re-expressed");
  }

  private static double[] old(TranslatedGraph graph) {
    return Values.of(graph.bands(), b -> b.fromDb().orElse(Double.NaN));
  }

  private static double[] now(
      TranslatedGraph graph, ToDoubleFunction<TranslatedBand.Predicted> what) {
    return Values.known(graph.bands().stream().map(TranslatedBand::predicted).toList(), what);
  }

  /** How many dB of an example are as long as one decade: 25, or 50 where the range asks for it. */
  public static double examplesDbPerDecade(TranslatedGraph graph) {
    return exampleLevels(graph).perDecade();
  }

  /**
   * One old graph, what it becomes, and the pale band around that, over the strip of its marks, as
   * an inline SVG as wide as its place; at least one band has a level.
   */
  public static String example(TranslatedGraph graph) {
    return SvgText.wideAndNarrow("graph", ON_A_PAGE, (d, width) -> paint(graph, d, width));
  }

  private static int paint(TranslatedGraph graph, Drawing d, int width) {
    Axis hz =
        width < FEW_TICKS_BELOW
            ? Axis.fewFrequencies(20, 100, 1000, 10_000)
            : Axis.fewFrequencies(20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000);
    List<Stretch> marks = Stretch.of(graph);
    Rectangle box = DifferenceGraphs.place(width, exampleLevels(graph));
    plot(graph, hz, exampleLevels(graph), "").paint(d, box);
    MarkStrip.veil(d, marks, box);
    return MarkStrip.paintBelow(d, marks, box);
  }

  private static Axis exampleLevels(TranslatedGraph graph) {
    Axis levels = levels(graph, "dB", 0);
    return levels.to() - levels.from() > TALLEST_AT_25_DB ? levels.withProportion(50) : levels;
  }
}
