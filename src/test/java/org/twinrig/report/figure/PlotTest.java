package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.reliability.Mark;

class PlotTest {
  private static final Rectangle BOX = new Rectangle(50, 20, 300, 200);
  private static final Axis DB = Axis.stepped("Level, dB", -10, 10, 5, 10);

  private static List<Drawing.Item> items(Plot plot) {
    Drawing drawing = new Drawing();
    plot.paint(drawing, BOX);
    return drawing.items();
  }

  private static List<Drawing.Line> lines(Plot plot, Ink.Pen pen) {
    return items(plot).stream()
        .filter(Drawing.Line.class::isInstance)
        .map(Drawing.Line.class::cast)
        .filter(l -> l.pen().equals(pen))
        .toList();
  }

  private static List<Drawing.Fill> fills(Plot plot, Color colour) {
    return items(plot).stream()
        .filter(Drawing.Fill.class::isInstance)
        .map(Drawing.Fill.class::cast)
        .filter(f -> f.colour().equals(colour))
        .toList();
  }

  private static List<String> words(Plot plot) {
    return items(plot).stream()
        .filter(Drawing.Text.class::isInstance)
        .map(t -> ((Drawing.Text) t).words())
        .toList();
  }

  /** The axes must lie where the plotting library puts its layers. */
  @Test
  void thePlottingLibraryFillsItsPlaceToTheEdge() {
    XYChart chart = new LayerPainter(Axis.frequency(), DB, new Rectangle(700, 300)).chart();
    chart.addSeries("s", new double[] {100, 1000}, new double[] {-1, 1});
    chart.paint(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics(), 700, 300);
    assertEquals(0, chart.getScreenXFromChart(20), 1e-9);
    assertEquals(700 / 3.0, chart.getScreenXFromChart(200), 1e-9);
    assertEquals(700, chart.getScreenXFromChart(20_000), 1e-9);
    assertEquals(300, chart.getScreenYFromChart(-10), 1e-9);
    assertEquals(0, chart.getScreenYFromChart(10), 1e-9);
  }

  @Test
  void aCurveIsOnePathHoweverManyPointsItHasAndLiesOnBothAxes() {
    double[] hz = new double[241];
    Arrays.setAll(hz, k -> 20 * Math.pow(10, k / 80.0));
    double[] db = new double[241];
    Arrays.setAll(db, k -> 5 * Math.sin(k / 20.0));
    List<Drawing.Line> drawn = lines(Plot.overFrequency(DB).line(hz, db, Ink.OLD), Ink.OLD);
    assertEquals(1, drawn.size());
    Rectangle2D bounds = drawn.get(0).path().getBounds2D();
    assertEquals(50, bounds.getMinX(), 1e-6);
    assertEquals(350, bounds.getMaxX(), 1e-6);
    assertEquals(70, bounds.getMinY(), 0.1);
    assertEquals(170, bounds.getMaxY(), 0.1);
    assertEquals(Optional.of(new Rectangle2D.Double(50, 20, 300, 200)), drawn.get(0).clip());
  }

  @Test
  void whatIsNotKnownOrBeyondTheFrequenciesIsABreak() {
    double[] hz = {0, 10, 20, 200, 2000, 5000, 10_000, 20_000, 30_000};
    double[] db = {1, 1, 1, 1, Double.NaN, 1, 1, 1, 1};
    String data =
        SvgText.data(lines(Plot.overFrequency(DB).line(hz, db, Ink.OLD), Ink.OLD).get(0).path());
    assertEquals("M50 110l100 0M289.79 110l30.11 0l30.1 0", data);
    assertFalse(items(Plot.overFrequency(DB).line(hz, new double[9], Ink.OLD)).isEmpty());
    double[] nothing = new double[9];
    Arrays.fill(nothing, Double.NaN);
    assertTrue(lines(Plot.overFrequency(DB).line(hz, nothing, Ink.OLD), Ink.OLD).isEmpty());
    assertTrue(fills(Plot.overFrequency(DB).area(hz, nothing, nothing, "a"), Ink.BAND).isEmpty());
  }

  @Test
  void aCurveIsDrawnUpToTheFrameAndNoFarther() {
    double[] hz = {20, 200, 500, 2000, 5000, 20_000};
    double[] db = {0, 20, 30, 40, 20, 0};
    String data =
        SvgText.data(lines(Plot.overFrequency(DB).line(hz, db, Ink.OLD), Ink.OLD).get(0).path());
    assertEquals("M50 120l100-200M289.79 -80l60.21 200", data);
  }

  @Test
  void anAreaIsOneShapeForEachUnbrokenPiece() {
    double[] hz = {20, 200, 500, 2000, 20_000};
    double[] low = {0, 0, Double.NaN, -5, -5};
    double[] high = {5, 5, Double.NaN, 0, 0};
    List<Drawing.Fill> drawn = fills(Plot.overFrequency(DB).area(hz, low, high, "a"), Ink.BAND);
    assertEquals(2, drawn.size());
    assertEquals(new Rectangle2D.Double(50, 70, 100, 50), drawn.get(0).shape().getBounds2D());
    assertEquals(new Rectangle2D.Double(250, 120, 100, 50), drawn.get(1).shape().getBounds2D());
  }

  @Test
  void pointsStandAtTheirPlacesOnLogarithmicAxesUncut() {
    Axis hz = Axis.logarithmic("Hz", 100, 10_000, List.of(), List.of());
    double[] at = {100, 1000};
    double[] up = {10_000, 1000};
    Plot plot =
        new Plot(hz, hz, false)
            .with(new Plot.Dots(at, up, SeriesMarkers.CIRCLE, Ink.NEW_FIXTURE), "a unit");
    List<Drawing.Fill> drawn = fills(plot, Ink.NEW_FIXTURE);
    assertEquals(2, drawn.size());
    assertEquals(50, drawn.get(0).shape().getBounds2D().getCenterX(), 1e-6);
    assertEquals(20, drawn.get(0).shape().getBounds2D().getCenterY(), 1e-6);
    assertEquals(200, drawn.get(1).shape().getBounds2D().getCenterX(), 1e-6);
    assertEquals(120, drawn.get(1).shape().getBounds2D().getCenterY(), 1e-6);
    assertTrue(drawn.stream().allMatch(f -> f.clip().isEmpty()));
  }

  @Test
  void theFrequencyAxisHasTheUsualTicksAndLines() {
    assertEquals(
        List.of("20", "50", "100", "200", "500", "1k", "2k", "5k", "10k", "20k"),
        Axis.frequency().ticks().stream().map(Axis.Tick::label).toList());
    List<Double> lines = Axis.frequency().lines();
    assertEquals(28, lines.size());
    assertEquals(20, lines.get(0));
    assertEquals(20_000, lines.get(27), 1e-9);
    List<String> words =
        words(Plot.overFrequency(DB).note("here", 1000, 0, Drawing.Lie.START, Ink.NOTE));
    assertTrue(words.containsAll(List.of("Level, dB", "Frequency, Hz", "-10", "5", "here")));
  }

  @Test
  void axesEndAtWholeStepsAndKeepTheirProportions() {
    Axis small = Axis.differences("", -2.5, 2.5);
    assertEquals(List.of(-5.0, 5.0, 10.0), List.of(small.from(), small.to(), small.perDecade()));
    Axis large = Axis.differences("", -12, 10);
    assertEquals(List.of(-15.0, 10.0, 25.0), List.of(large.from(), large.to(), large.perDecade()));
    assertEquals(250, large.height(250), 1e-9);
    assertEquals(List.of(0.02, 0.05, 1.0), List.of(step(0.011), step(0.05), step(0.6)));
  }

  private static double step(double least) {
    return Axis.roundStep(least);
  }

  @Test
  void marksAreFullHalfHatchedOrAGap() {
    List<Stretch> marks =
        List.of(
            new Stretch(20, 200, Optional.of(Mark.RELIABLE)),
            new Stretch(200, 2000, Optional.empty()),
            new Stretch(2000, 6000, Optional.of(Mark.CAUTION)),
            new Stretch(6000, 20_000, Optional.of(Mark.UNRELIABLE)));
    Drawing strip = new Drawing();
    MarkStrip.paint(strip, marks, new Rectangle(0, 0, 300, 12));
    assertEquals(3, strip.items().size());
    Drawing.Fill full = (Drawing.Fill) strip.items().get(0);
    assertEquals(100, full.shape().getBounds2D().getMaxX(), 1e-9);
    assertEquals(12, full.shape().getBounds2D().getHeight());
    Drawing.Fill half = (Drawing.Fill) strip.items().get(1);
    assertEquals(6, half.shape().getBounds2D().getMinY());
    assertEquals(6, half.shape().getBounds2D().getHeight());
    String hatched = SvgText.data(((Drawing.Line) strip.items().get(2)).path());
    assertTrue(hatched.chars().filter(c -> c == 'M').count() > 10, hatched);
    assertEquals(300, ((Drawing.Line) strip.items().get(2)).path().getBounds2D().getMaxX(), 1e-9);
  }

  @Test
  void longTitlesAreSetSmallerAndNotCut() {
    assertTrue(sheet("Short").contains("font-size=\"16\" font-weight=\"bold\""));
    String wide = "Wide ".repeat(16).trim();
    assertFalse(sheet(wide).contains("font-size=\"16\""));
    assertTrue(Ink.TITLE.fitting(wide, 700).width(wide) <= 700);
    assertEquals(9, Ink.TITLE.fitting(wide.repeat(9), 700).font().getSize(), "still to be read");
  }

  private static String sheet(String title) {
    return new Sheet(title, "", "")
        .overFrequency(Plot.overFrequency(DB), List.of())
        .figure("name", "alt")
        .svg();
  }

  @Test
  void namesCoverNoPointAndNoOtherName() {
    Plot plot = Plot.overFrequency(DB);
    for (int k = 0; k < 3; k++) {
      plot.name("Oak " + k, 15_000, 1 - k);
    }
    List<Drawing.Text> names =
        items(plot).stream()
            .filter(i -> i instanceof Drawing.Text t && t.words().startsWith("Oak"))
            .map(Drawing.Text.class::cast)
            .toList();
    assertEquals(3, names.size());
    for (Drawing.Text name : names) {
      double end = name.x() + Ink.SMALL.width(name.words());
      assertTrue(name.x() >= 50 && end <= 350, name.words() + " stays inside the frame");
      assertTrue(end < 50 + 300 * Axis.frequency().share(15_000) - 4, "left of the points");
    }
    assertTrue(Math.abs(names.get(0).y() - names.get(1).y()) > 8, "apart from each other");
  }
}
