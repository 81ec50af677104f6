package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;

/**
 * One old graph, what it becomes, and the pale band around that, for a page of any width.
 *
 * @param graph at least one band has a level
 */
public record ExampleGraph(TranslatedGraph graph) {
  private static final double STEP_DB = 10;
  private static final int ON_A_PAGE = 720;
  private static final int FEW_TICKS_BELOW = 500;

  /** A range above this would make the graph taller than a fifth of a sheet. */
  private static final double TALLEST_AT_25_DB = 20;

  /** How many dB are as long as one decade: 25, or 50 where the range asks for it (IEC 60263). */
  public double dbPerDecade() {
    return db().perDecade();
  }

  /** The drawing over the strip of its marks, as an inline SVG as wide as its place. */
  public String svg() {
    return SvgText.wideAndNarrow("graph", ON_A_PAGE, this::paint);
  }

  private int paint(Drawing d, int width) {
    double[] hz = Values.of(graph.bands(), b -> b.band().midHz());
    Axis across =
        width < FEW_TICKS_BELOW
            ? Axis.fewFrequencies(20, 100, 1000, 10_000)
            : Axis.fewFrequencies(20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000);
    Plot plot =
        new Plot(across, db(), false)
            .area(
                hz,
                predicted(TranslatedBand.Predicted::lowDb),
                predicted(TranslatedBand.Predicted::highDb),
                "")
            .line(hz, old(), Ink.OLD)
            .line(hz, predicted(TranslatedBand.Predicted::toDb), Ink.NEW);
    Rectangle place = new Rectangle(32, 20, width - 44, 0);
    List<Stretch> marks = Stretch.of(graph);
    int height = DifferenceGraphs.paint(d, plot, place, marks);
    place.height = (int) Math.round(db().height(place.width / 3.0));
    MarkStrip.veil(d, marks, place);
    return height;
  }

  private double[] old() {
    return Values.of(graph.bands(), b -> b.fromDb().orElse(Double.NaN));
  }

  private double[] predicted(java.util.function.ToDoubleFunction<TranslatedBand.Predicted> value) {
    List<Optional<TranslatedBand.Predicted>> all =
        graph.bands().stream().map(TranslatedBand::predicted).toList();
    return Values.known(all, value);
  }

  private Axis db() {
    double[] low = predicted(TranslatedBand.Predicted::lowDb);
    double[] high = predicted(TranslatedBand.Predicted::highDb);
    double lowest = Values.least(Double.POSITIVE_INFINITY, old(), low);
    double highest = Values.greatest(Double.NEGATIVE_INFINITY, old(), high);
    if (lowest > highest) {
      throw new IllegalArgumentException("a graph without any level cannot be drawn");
    }
    Axis axis = Axis.stepped("dB", lowest, highest, STEP_DB, 25);
    return axis.to() - axis.from() > TALLEST_AT_25_DB ? axis.withProportion(50) : axis;
  }
}
