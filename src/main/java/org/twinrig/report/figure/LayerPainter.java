package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Has the plotting library draw the layers of a plot, on axes pinned to the plot's own place. */
record LayerPainter(Axis across, Axis up, Rectangle box) {

  /** Curves and areas are cut at the frame, points are not: a half point would be another shape. */
  void paint(Drawing d, List<Plot.Layer> layers) {
    paint(d, layers.stream().filter(l -> !(l instanceof Plot.Dots)).toList(), true);
    paint(d, layers.stream().filter(Plot.Dots.class::isInstance).toList(), false);
  }

  private void paint(Drawing d, List<Plot.Layer> layers, boolean clipped) {
    if (layers.isEmpty()) {
      return;
    }
    XYChart chart = chart();
    for (Plot.Layer layer : layers) {
      add(chart, layer);
    }
    d.painted(g -> chart.paint(g, box.width, box.height), box.x, box.y, clipped);
  }

  /** A chart that is nothing but its plot. */
  XYChart chart() {
    XYChart chart = new XYChart(box.width, box.height);
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
        .setXAxisLogarithmic(across.logarithmic())
        .setYAxisLogarithmic(up.logarithmic())
        .setXAxisMin(across.from())
        .setXAxisMax(across.to())
        .setYAxisMin(up.from())
        .setYAxisMax(up.to());
    return chart;
  }

  private void add(XYChart chart, Plot.Layer layer) {
    String name = "layer " + chart.getSeriesMap().size();
    if (layer instanceof Plot.Area area) {
      double[][] outline = outline(area);
      XYSeries series = chart.addSeries(name, outline[0], outline[1]);
      series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
      series.setFillColor(area.colour());
      series.setLineStyle(SeriesLines.NONE);
      series.setMarker(SeriesMarkers.NONE);
    } else if (layer instanceof Plot.Line line) {
      XYSeries series =
          chart.addSeries(name, held(line.across()), inside(line.across(), line.up()));
      series.setLineColor(line.pen().colour());
      series.setLineStyle(line.pen().stroke());
      series.setMarker(SeriesMarkers.NONE);
    } else if (layer instanceof Plot.Dots dots) {
      double[] y =
          Arrays.stream(dots.up()).map(v -> Math.max(up.from(), Math.min(up.to(), v))).toArray();
      XYSeries series = chart.addSeries(name, held(dots.across()), inside(dots.across(), y));
      series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
      series.setMarkerColor(dots.dot().fill).setMarker(new DotMarker(dots.dot()));
    }
  }

  /** Places on the axis; what is drawn nowhere stands at its beginning. */
  private double[] held(double[] places) {
    return Arrays.stream(places).map(v -> across.holds(v) ? v : across.from()).toArray();
  }

  /** Values where the axis across holds their place, NaN elsewhere. */
  private double[] inside(double[] places, double[] values) {
    double[] inside = values.clone();
    for (int k = 0; k < values.length; k++) {
      inside[k] = across.holds(places[k]) ? values[k] : Double.NaN;
    }
    return inside;
  }

  /** Each unbroken piece forth along its upper end and back along its lower one, then a break. */
  private double[][] outline(Plot.Area area) {
    double[] low = inside(area.across(), area.low());
    List<double[]> points = new ArrayList<>();
    for (int start = 0, k = 0; k <= low.length; k++) {
      if (k == low.length || Double.isNaN(low[k]) || Double.isNaN(area.high()[k])) {
        for (int p = start; p < k; p++) {
          points.add(new double[] {area.across()[p], area.high()[p]});
        }
        for (int p = k - 1; p >= start; p--) {
          points.add(new double[] {area.across()[p], low[p]});
        }
        points.add(new double[] {across.from(), Double.NaN});
        start = k + 1;
      }
    }
    return new double[][] {
      points.stream().mapToDouble(p -> p[0]).toArray(),
      points.stream().mapToDouble(p -> p[1]).toArray()
    };
  }

  /** The shapes of the report's points. */
  private static final class DotMarker extends Marker {
    private final Plot.Dot dot;

    DotMarker(Plot.Dot dot) {
      this.dot = dot;
    }

    @Override
    public void paint(Graphics2D g, double x, double y, int size) {
      g.fill(dot.at(x, y));
      if (dot.outlined) {
        g.setColor(Ink.TEXT);
        g.setStroke(Ink.THIN);
        g.draw(dot.at(x, y));
      }
    }
  }
}
