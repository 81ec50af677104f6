package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.List;
import org.twinrig.translation.TranslatedGraph;

/**
 * One old graph, what it becomes, and the pale band around that, for a page of any width.
 *
 * @param graph at least one band has a level
 */
public record ExampleGraph(TranslatedGraph graph) {
  private static final int ON_A_PAGE = 720;
  private static final int FEW_TICKS_BELOW = 500;

  /** A range above this would make the graph taller than a fifth of a sheet. */
  private static final double TALLEST_AT_25_DB = 20;

  /** How many dB are as long as one decade: 25, or 50 where the range asks for it (IEC 60263). */
  public double dbPerDecade() {
    return levels().perDecade();
  }

  /** The drawing over the strip of its marks, as an inline SVG as wide as its place. */
  public String svg() {
    return SvgText.wideAndNarrow("graph", ON_A_PAGE, this::paint);
  }

  private int paint(Drawing d, int width) {
    Axis hz =
        width < FEW_TICKS_BELOW
            ? Axis.fewFrequencies(20, 100, 1000, 10_000)
            : Axis.fewFrequencies(20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000);
    List<Stretch> marks = Stretch.of(graph);
    Rectangle box = DifferenceGraphs.place(width, levels());
    GraphFigure.plot(graph, hz, levels(), "").paint(d, box);
    MarkStrip.veil(d, marks, box);
    return MarkStrip.paintBelow(d, marks, box);
  }

  private Axis levels() {
    Axis levels = GraphFigure.levels(graph, "dB", 0);
    return levels.to() - levels.from() > TALLEST_AT_25_DB ? levels.withProportion(50) : levels;
  }
}
