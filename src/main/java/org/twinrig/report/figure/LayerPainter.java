package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Rectangle;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Has the plotting library draw the layers of a plot, on axes pinned to the plot's own place. */
record LayerPainter(Axis across, Axis up, Rectangle box) {

  /** Curves and areas are cut at the frame, points are not: half a point is another shape. */
  void paint(Drawing d, List<Plot.Layer> layers) {
    Map<Boolean, List<Plot.Layer>> points =
        layers.stream()
            .filter(l -> l.across().length > 0) // the library refuses an empty series
            .collect(Collectors.partitioningBy(Plot.Dots.class::isInstance));
    paint(d, points.get(false), true);
    paint(d, points.get(true), false);
  }

  private void paint(Drawing d, List<Plot.Layer> layers, boolean clipped) {
    if (!layers.isEmpty()) {
      XYChart chart = chart();
      layers.forEach(layer -> add(chart, layer));
      d.painted(g -> chart.paint(g, box.width, box.height), box.x, box.y, clipped);
    }
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
    chart.getStyler().setMarkerSize(Plot.MARKER_SIZE);
    return chart;
  }

  private void add(XYChart chart, Plot.Layer layer) {
    if (layer instanceof Plot.Area area) {
      XYSeries series =
          series(
              chart,
              thereAndBack(area.across(), area.across(), area.high()),
              thereAndBack(area.high(), area.low(), area.high()));
      series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
      series.setFillColor(area.colour());
      series.setLineStyle(SeriesLines.NONE);
    } else if (layer instanceof Plot.Line line) {
      XYSeries series = series(chart, line.across(), near(line.up()));
      series.setLineColor(line.pen().colour()).setLineStyle(line.pen().stroke());
    } else if (layer instanceof Plot.Dots dots) {
      XYSeries series =
          series(chart, dots.across(), Arrays.stream(dots.up()).map(up::held).toArray());
      series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
      series.setMarkerColor(dots.colour());
      series.setMarker(dots.shape());
    }
  }

  /** A series of the places that the axis across holds; elsewhere it has a break. */
  private XYSeries series(XYChart chart, double[] places, double[] values) {
    double[] x =
        Arrays.stream(places).map(v -> Double.isNaN(v) ? across.from() : across.held(v)).toArray();
    double[] y = values.clone();
    for (int k = 0; k < y.length; k++) {
      y[k] = x[k] == places[k] ? y[k] : Double.NaN;
    }
    XYSeries series = chart.addSeries("layer " + chart.getSeriesMap().size(), x, y);
    series.setMarker(SeriesMarkers.NONE);
    return series;
  }

  /** What lies beyond one end of the axis up together with both its neighbours is not drawn. */
  private double[] near(double[] values) {
    double[] near = values.clone();
    for (int k = 1; k < values.length - 1; k++) {
      boolean over = values[k - 1] > up.to() && values[k] > up.to() && values[k + 1] > up.to();
      boolean under =
          values[k - 1] < up.from() && values[k] < up.from() && values[k + 1] < up.from();
      near[k] = over || under ? Double.NaN : values[k];
    }
    return near;
  }

  /** Each piece between breaks along one curve, then back along the other one, then a break. */
  private static double[] thereAndBack(double[] there, double[] back, double[] breaks) {
    DoubleStream.Builder points = DoubleStream.builder();
    int start = 0;
    for (int k = 0; k <= there.length; k++) {
      if (k == there.length || Double.isNaN(breaks[k])) {
        for (int p = start; p < k; p++) {
          points.add(there[p]);
        }
        for (int p = k - 1; p >= start; p--) {
          points.add(back[p]);
        }
        points.add(Double.NaN);
        start = k + 1;
      }
    }
    return points.build().toArray();
  }
}
