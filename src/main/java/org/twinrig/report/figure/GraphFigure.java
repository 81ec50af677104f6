package org.twinrig.report.figure;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;

/** One re-expressed graph with its interval over the old one. */
public final class GraphFigure {
  private GraphFigure() {}

  /**
   * Draws one graph.
   *
   * @param graph the graph; at least one band has a level
   * @param fixtures names of the fixtures
   * @param fingerprint of the study
   * @return the drawing
   */
  public static Figure of(
      TranslatedGraph graph, CapturesFigure.Fixtures fixtures, String fingerprint) {
    List<TranslatedBand> bands = graph.bands();
    int n = bands.size();
    double[] hz = bands.stream().mapToDouble(b -> b.band().midHz()).toArray();
    double[] old = new double[n];
    double[] now = new double[n];
    double[] low = new double[n];
    double[] high = new double[n];
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int b = 0; b < n; b++) {
      old[b] = bands.get(b).fromDb().orElse(Double.NaN);
      now[b] = low[b] = high[b] = Double.NaN;
      if (bands.get(b).predicted().isPresent()) {
        TranslatedBand.Predicted p = bands.get(b).predicted().get();
        now[b] = p.toDb();
        low[b] = p.lowDb();
        high[b] = p.highDb();
      }
      for (double level : new double[] {old[b], low[b], high[b]}) {
        if (!Double.isNaN(level)) {
          lowest = Math.min(lowest, level);
          highest = Math.max(highest, level);
        }
      }
    }
    if (lowest > highest) {
      lowest = 0;
      highest = 10;
    }
    double reliable = graph.octaves(Mark.RELIABLE);
    String title =
        graph.entry().graph()
            + (reliable == 0
                ? ": no band can be read as measured"
                : ": " + Numbers.fixed(reliable, 1) + " octaves can be read as measured");
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    graph.entry().unit()
                        + ", "
                        + graph.entry().kind()
                        + "; the pale band is where a new measurement is expected",
                    "Level, dB",
                    fingerprint),
                Panel.Range.holding(lowest - 1, highest + 1, 10, 25))
            .withArea(hz, low, high, "prediction interval")
            .withCurve(
                new Panel.Curve(hz, old, Ink.OLD_FIXTURE, Ink.DASHED), "old: " + fixtures.from())
            .withCurve(new Panel.Curve(hz, now, Ink.NEW_FIXTURE, Ink.CURVE), "re-expressed")
            .withStrip(
                bands.stream()
                    .map(b -> new MarkStrip.Cell(b.band(), b.mark(), b.missing()))
                    .toList());
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("graph", graph.entry().graph()),
            title,
            "Old graph and re-expressed graph against frequency, with prediction interval and marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }
}
