package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;

/**
 * One old graph, what it becomes, and the pale band around that, on an axis as wide as the page.
 */
public final class ExampleGraph {
  private static final double STEP_DB = 10;

  /** A range above this would make the graph taller than a fifth of a sheet. */
  private static final double TALLEST_AT_25_DB = 20;

  private final TranslatedGraph graph;

  /**
   * A drawing.
   *
   * @param graph at least one band has a level
   */
  public ExampleGraph(TranslatedGraph graph) {
    this.graph = graph;
  }

  /**
   * How many dB are as long as one decade: 25, or 50 where the range asks for it (IEC 60263).
   *
   * @return dB
   */
  public double dbPerDecade() {
    return range().dbPerDecade();
  }

  /**
   * The drawing.
   *
   * @return an inline SVG as wide as its place
   */
  public String svg() {
    return new FluidGraph(range())
        .withArea(
            each(
                b ->
                    b.predicted()
                        .map(p -> new FluidGraph.Slice(b.band().midHz(), p.lowDb(), p.highDb()))))
        .withVeil(Stretch.of(graph))
        .withCurve(each(ExampleGraph::old), Ink.OLD_FIXTURE, Ink.DASHED)
        .withCurve(
            each(b -> b.predicted().map(p -> new FluidGraph.Point(b.band().midHz(), p.toDb()))),
            Ink.NEW_FIXTURE,
            Ink.CURVE)
        .svg(false);
  }

  private <T> List<Optional<T>> each(java.util.function.Function<TranslatedBand, Optional<T>> of) {
    return graph.bands().stream().map(of).toList();
  }

  private static Optional<FluidGraph.Point> old(TranslatedBand b) {
    return b.missing()
        ? Optional.empty()
        : Optional.of(new FluidGraph.Point(b.band().midHz(), b.fromDb().orElseThrow()));
  }

  private Panel.Range range() {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (TranslatedBand b : graph.bands()) {
      if (b.fromDb().isPresent()) {
        lowest = Math.min(lowest, b.fromDb().getAsDouble());
        highest = Math.max(highest, b.fromDb().getAsDouble());
      }
      if (b.predicted().isPresent()) {
        lowest = Math.min(lowest, b.predicted().get().lowDb());
        highest = Math.max(highest, b.predicted().get().highDb());
      }
    }
    if (lowest > highest) {
      throw new IllegalArgumentException("a graph without any level cannot be drawn");
    }
    Panel.Range at25 = Panel.Range.holding(lowest, highest, STEP_DB, 25);
    return at25.toDb() - at25.fromDb() > TALLEST_AT_25_DB
        ? new Panel.Range(at25.fromDb(), at25.toDb(), STEP_DB, 50)
        : at25;
  }
}
