package org.twinrig.report.figure;

import java.util.List;
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
    List<TranslatedBand> bands = graph.bands();
    double[] hz = Values.of(bands, b -> b.band().midHz());
    double[] old = Values.of(bands, b -> b.fromDb().orElse(Double.NaN));
    List<java.util.Optional<TranslatedBand.Predicted>> predicted =
        bands.stream().map(TranslatedBand::predicted).toList();
    double[] low = Values.known(predicted, TranslatedBand.Predicted::lowDb);
    double[] high = Values.known(predicted, TranslatedBand.Predicted::highDb);
    Plot plot =
        Plot.overFrequency(Axis.levelsHolding("Level, dB", old, low, high))
            .area(hz, low, high, "prediction interval")
            .line(hz, old, Ink.OLD, "old: " + origin.from())
            .line(
                hz,
                Values.known(predicted, TranslatedBand.Predicted::toDb),
                Ink.NEW,
                "re-expressed");
    double reliable = graph.octaves(Mark.RELIABLE);
    String octaves = reliable == 0 ? "no band" : Numbers.fixed(reliable, 1) + " octaves";
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
}
