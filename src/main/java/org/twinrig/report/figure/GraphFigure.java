package org.twinrig.report.figure;

import java.util.function.ToDoubleFunction;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** One re-expressed graph with its interval over the old one. */
public final class GraphFigure {
  private GraphFigure() {}

  /** Draws a graph; the origin is that of its translation. */
  public static Figure of(TranslatedGraph graph, Translation.Origin origin) {
    double reliable = graph.octaves(Mark.RELIABLE);
    String octaves = reliable == 0 ? "no band" : Numbers.fixed(reliable, 1) + " octaves";
    Plot plot = plot(graph, Axis.frequency(), levels(graph, "Level, dB", 1), origin.from());
    return new Sheet(
            "%s: %s can be read as measured".formatted(graph.entry().graph(), octaves),
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
}
