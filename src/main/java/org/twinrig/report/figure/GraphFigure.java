package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.response.Anchor;
import org.twinrig.translation.CatalogueEntry;
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

  /** Draws a graph; origin and anchor are those of its translation. */
  public static Figure of(TranslatedGraph given, Translation.Origin origin, Anchor anchor) {
    Lined lined = Lined.of(given, anchor);
    TranslatedGraph graph = lined.graph;
    double reliable = graph.octaves(Mark.RELIABLE);
    String octaves = reliable == 0 ? "no band" : Numbers.fixed(reliable, 1) + " octaves";
    Plot plot =
        plot(graph, Axis.frequency(), levels(graph, lined.words, 1), origin.from())
            .linedUp(lined.anchor);
    return new Sheet(
            "%s: %s marked reliable".formatted(graph.entry().graph(), octaves),
            "%s, %s; the pale band is where a new measurement is expected%s"
                .formatted(
                    graph.entry().unit(), graph.entry().kind(), lined.anchor.afterLiningUp()),
            origin.fingerprint())
        .overFrequency(plot, Stretch.of(graph))
        .figure(
            Figure.nameOf("graph", graph.entry().graph()),
            "Old graph and re-expressed graph against frequency, with prediction interval and"
                + " marks");
  }

  /**
   * A graph as it is drawn: an absolute one in dB SPL, any other in dB re its mean over the anchor
   * where it covers that.
   *
   * @param anchor where it is lined up
   */
  private record Lined(TranslatedGraph graph, Anchor anchor, String words) {
    static Lined of(TranslatedGraph graph, Anchor anchor) {
      if (graph.treatment().level() == CatalogueEntry.Level.ABSOLUTE) {
        String words = "Level, dB SPL (re 20 µPa) at " + graph.entry().drive().orElseThrow();
        return new Lined(graph, new Anchor.None(), words);
      }
      Optional<TranslatedGraph> lined = graph.re(anchor);
      Anchor at = lined.isPresent() ? anchor : new Anchor.None();
      return new Lined(lined.orElse(graph), at, Axis.lined(at));
    }
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

  /** Whether a graph is drawn lined up: where it is relative and covers the anchor. */
  public static boolean linedUp(TranslatedGraph graph, Anchor anchor) {
    return !(Lined.of(graph, anchor).anchor instanceof Anchor.None);
  }

  /** How many dB of an example are as long as one decade: 25, or 50 where the range asks for it. */
  public static double examplesDbPerDecade(TranslatedGraph graph, Anchor anchor) {
    return exampleLevels(Lined.of(graph, anchor)).perDecade();
  }

  /**
   * One old graph, what it becomes, and the pale band around that, over the strip of its marks, as
   * an inline SVG as wide as its place; at least one band has a level.
   */
  public static String example(TranslatedGraph graph, Anchor anchor) {
    Lined lined = Lined.of(graph, anchor);
    return SvgText.wideAndNarrow("graph", ON_A_PAGE, (d, width) -> paint(lined, d, width));
  }

  private static int paint(Lined lined, Drawing d, int width) {
    Axis hz =
        width < FEW_TICKS_BELOW
            ? Axis.fewFrequencies(20, 100, 1000, 10_000)
            : Axis.fewFrequencies(20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000);
    List<Stretch> marks = Stretch.of(lined.graph);
    Axis levels = exampleLevels(lined);
    Rectangle box = DifferenceGraphs.place(width, levels);
    plot(lined.graph, hz, levels, "").linedUp(lined.anchor).paint(d, box);
    MarkStrip.veil(d, marks, box);
    return MarkStrip.paintBelow(d, marks, box);
  }

  private static Axis exampleLevels(Lined lined) {
    Axis levels = levels(lined.graph, "dB", 0);
    return levels.to() - levels.from() > TALLEST_AT_25_DB ? levels.withProportion(50) : levels;
  }
}
