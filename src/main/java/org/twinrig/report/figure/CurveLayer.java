package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * The curves of a panel: the plotting library draws them, on axes pinned to the panel's own place.
 */
final class CurveLayer {
  private CurveLayer() {}

  static void paint(Graphics2D g, List<Panel.Curve> curves, Panel.Range range, Rectangle place) {
    if (curves.isEmpty()) {
      return;
    }
    XYChart chart = new XYChart(place.width, place.height);
    Color clear = new Color(255, 255, 255, 0);
    chart
        .getStyler()
        .setLegendVisible(false)
        .setChartTitleVisible(false)
        .setChartBackgroundColor(clear)
        .setPlotBackgroundColor(clear)
        .setPlotBorderVisible(false)
        .setChartPadding(0)
        .setPlotContentSize(1.0);
    chart
        .getStyler()
        .setAxisTicksVisible(false)
        .setAxisTitlesVisible(false)
        .setPlotGridLinesVisible(false)
        .setPlotMargin(0)
        .setAxisTickPadding(0)
        .setXAxisMin(Math.log10(20))
        .setXAxisMax(Math.log10(20_000))
        .setYAxisMin(range.fromDb())
        .setYAxisMax(range.toDb());
    int number = 0;
    for (Panel.Curve curve : curves) {
      for (Panel.Curve piece : pieces(curve)) {
        XYSeries series = chart.addSeries("s" + number++, lg(piece.hz()), piece.db());
        series.setMarker(SeriesMarkers.NONE);
        series.setLineColor(piece.colour());
        series.setLineStyle((BasicStroke) piece.stroke());
      }
    }
    if (number > 0) {
      g.translate(place.x, place.y);
      chart.paint(g, place.width, place.height);
      g.translate(-place.x, -place.y);
    }
  }

  /** Runs of points that have a level inside the panel's frequency range. */
  private static List<Panel.Curve> pieces(Panel.Curve curve) {
    List<Panel.Curve> pieces = new ArrayList<>();
    int start = -1;
    for (int k = 0; k <= curve.hz().length; k++) {
      boolean inside =
          k < curve.hz().length
              && !Double.isNaN(curve.db()[k])
              && curve.hz()[k] >= 20
              && curve.hz()[k] <= 20_000;
      if (inside && start < 0) {
        start = k;
      } else if (!inside && start >= 0) {
        pieces.add(
            new Panel.Curve(
                Arrays.copyOfRange(curve.hz(), start, k),
                Arrays.copyOfRange(curve.db(), start, k),
                curve.colour(),
                curve.stroke()));
        start = -1;
      }
    }
    return pieces;
  }

  private static double[] lg(double[] hz) {
    return Arrays.stream(hz).map(Math::log10).toArray();
  }
}
