package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.XYChart;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class MediumTest {
  private static final String HOSTILE = "<script>alert(\"x\")</script> & =cmd()|'/c'\u0007";

  private static Medium.Sheet sheet(String title) {
    return new Medium.Sheet("transfer-a", title, "alt of " + title, 200, 100);
  }

  /** Three segments as the plotting library hands them over, the colour set before each. */
  private static void segments(Graphics2D g) {
    g.translate(10, 20);
    for (int k = 0; k < 3; k++) {
      g.setColor(Color.RED);
      g.setColor(Ink.NEW_FIXTURE);
      g.setStroke(Ink.DASHED);
      g.draw(new Line2D.Double(5 * k, k, 5 * (k + 1), k + 1));
    }
    g.translate(-10, -20);
  }

  private static Document xml(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void segmentsThatFollowOnEachOtherBecomeOnePath() {
    List<Recording.Item> items = Recording.of(MediumTest::segments);

    assertEquals(1, items.size());
    assertEquals(
        "<path fill=\"none\" stroke=\"#1f3a6e\" stroke-width=\"1.1\" stroke-linejoin=\"round\""
            + " stroke-dasharray=\"5 3\" d=\"M10 20l5 1l5 1l5 1\"/>",
        Figures.line(Medium.draw(sheet("t"), MediumTest::segments).svg(), 1));
  }

  @Test
  void aCurveOfThePlottingLibraryIsOneElementHoweverManyPointsItHas() throws Exception {
    double[] lg = new double[241];
    double[] db = new double[241];
    Arrays.setAll(lg, k -> 1.3 + k / 80.0);
    Arrays.setAll(db, k -> 5 * Math.sin(k / 20.0));
    double[] hz = Arrays.stream(lg).map(x -> Math.pow(10, x)).toArray();
    Panel with = panel().withCurve(new Panel.Curve(hz, db, Ink.OLD_FIXTURE, Ink.DASHED));

    int before = elements(panel(), "path");
    assertEquals(before + 1, elements(with, "path"));
  }

  private static Panel panel() {
    return new Panel(
        new Panel.Texts("title", "subtitle", "Level, dB", "f00d"), new Panel.Range(-10, 10, 5, 10));
  }

  private static int elements(Panel panel, String name) throws Exception {
    Figure figure =
        Medium.draw(new Medium.Sheet("p", "t", "a", Panel.WIDTH, panel.height()), panel::paint);
    return xml(figure.svg()).getElementsByTagName(name).getLength();
  }

  @Test
  void aPieceOfAnotherColourOrStrokeOrElsewhereIsNotJoined() {
    Line2D first = new Line2D.Double(0, 0, 5, 5);
    Line2D next = new Line2D.Double(5, 5, 9, 9);
    assertEquals(2, Recording.of(g -> twice(g, first, next, Color.RED, Ink.THIN)).size());
    assertEquals(2, Recording.of(g -> twice(g, first, next, Color.BLUE, Ink.DOTTED)).size());
    String apart =
        Medium.draw(
                sheet("t"),
                g -> twice(g, first, new Line2D.Double(6, 6, 9, 9), Color.BLUE, Ink.THIN))
            .svg();
    assertTrue(apart.contains("d=\"M0 0l5 5M6 6l3 3\""), apart);
  }

  private static void twice(
      Graphics2D g, Line2D a, Line2D b, Color colourOfB, java.awt.Stroke strokeOfB) {
    g.setColor(Color.BLUE);
    g.setStroke(Ink.THIN);
    g.draw(a);
    g.setColor(colourOfB);
    g.setStroke(strokeOfB);
    g.draw(b);
  }

  @Test
  void whatIsClearIsNotWritten() {
    Consumer<Graphics2D> clear =
        g -> {
          g.setColor(new Color(255, 255, 255, 0));
          g.fill(new Rectangle2D.Double(0, 0, 10, 10));
          g.draw(new Line2D.Double(0, 0, 5, 5));
        };
    assertTrue(Recording.of(clear).isEmpty());
  }

  @Test
  void onlyWhatReachesOutOfItsClipIsCut() throws Exception {
    Figure figure =
        Medium.draw(
            sheet("t"),
            g -> {
              g.setClip(new Rectangle2D.Double(10, 10, 50, 50));
              g.setColor(Color.BLACK);
              g.setStroke(Ink.THIN);
              g.draw(new Line2D.Double(20, 20, 30, 30));
              g.setColor(Color.BLUE);
              g.draw(new Line2D.Double(20, 20, 90, 20));
            });
    NodeList paths = xml(figure.svg()).getElementsByTagName("path");
    assertEquals("", ((Element) paths.item(0)).getAttribute("clip-path"));
    assertEquals("url(#transfer-a-c0)", ((Element) paths.item(1)).getAttribute("clip-path"));
    BufferedImage png = ImageIO.read(new ByteArrayInputStream(figure.png()));
    assertEquals(Color.BLUE.getRGB(), png.getRGB(100, 40));
    assertEquals(Color.BLACK.getRGB(), png.getRGB(160, 40), "beyond the clip nothing is drawn");
  }

  @Test
  void wordsLieAsAskedInTheReadersOwnFonts() {
    String svg =
        Medium.draw(
                sheet("t"),
                g -> {
                  g.setColor(Ink.TEXT);
                  g.setFont(Ink.TITLE);
                  Words.after(g, "a", 1, 2);
                  g.setFont(Ink.NOTE);
                  Words.around(g, "b", 3, 4);
                  Words.before(g, "c", 5.25, 6);
                })
            .svg();
    assertEquals(
        "<text x=\"1\" y=\"2\" font-family=\"serif\" font-size=\"16\" font-weight=\"bold\""
            + " fill=\"#222226\">a</text>",
        Figures.line(svg, 1));
    assertEquals(
        "<text x=\"3\" y=\"4\" font-family=\"sans-serif\" font-size=\"11\" text-anchor=\"middle\""
            + " fill=\"#222226\">b</text>",
        Figures.line(svg, 2));
    assertEquals(
        "<text x=\"5.25\" y=\"6\" font-family=\"sans-serif\" font-size=\"11\" text-anchor=\"end\""
            + " fill=\"#222226\">c</text>",
        Figures.line(svg, 3));
  }

  @Test
  void hostileTextStaysText() throws Exception {
    String svg = Medium.draw(sheet(HOSTILE), g -> Words.after(g, HOSTILE, 0, 0)).svg();
    Document document = xml(svg);
    String shown = HOSTILE.replace('\u0007', '?');
    assertFalse(svg.contains("<script"));
    assertEquals(shown, document.getElementsByTagName("title").item(0).getTextContent());
    assertEquals("alt of " + shown, document.getElementsByTagName("desc").item(0).getTextContent());
    assertEquals(shown, document.getElementsByTagName("text").item(0).getTextContent());
  }

  @Test
  void theSameDrawingGivesTheSameBytes() throws IOException {
    Figure once = Medium.draw(sheet("t"), MediumTest::segments);
    Figure again = Medium.draw(sheet("t"), MediumTest::segments);
    assertEquals(once.svg(), again.svg());
    assertArrayEquals(once.png(), again.png());
    BufferedImage png = ImageIO.read(new ByteArrayInputStream(once.png()));
    assertEquals(400, png.getWidth());
    assertEquals(200, png.getHeight());
  }

  @Test
  void numbersAreTheShortestDecimals() {
    assertEquals("0", SvgText.number(0));
    assertEquals("-.05", SvgText.number(-5));
    assertEquals(".5", SvgText.number(50));
    assertEquals("12.34", SvgText.number(1234));
    assertEquals("-7", SvgText.number(-700));
  }

  /** The panel's own axes must lie where the plotting library puts its curves. */
  @Test
  void thePlottingLibraryFillsItsRectangleToTheEdge() {
    XYChart chart = new XYChart(700, 300);
    chart
        .getStyler()
        .setLegendVisible(false)
        .setChartTitleVisible(false)
        .setChartPadding(0)
        .setPlotContentSize(1.0);
    chart
        .getStyler()
        .setAxisTicksVisible(false)
        .setAxisTitlesVisible(false)
        .setPlotMargin(0)
        .setAxisTickPadding(0)
        .setXAxisMin(Math.log10(20))
        .setXAxisMax(Math.log10(20_000))
        .setYAxisMin(-10.0)
        .setYAxisMax(10.0);
    chart.addSeries("s", new double[] {2, 3}, new double[] {-1, 1});
    chart.paint(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics(), 700, 300);
    assertEquals(0, chart.getScreenXFromChart(Math.log10(20)), 1e-9);
    assertEquals(700 / 3.0, chart.getScreenXFromChart(Math.log10(200)), 1e-9);
    assertEquals(700, chart.getScreenXFromChart(Math.log10(20_000)), 1e-9);
    assertEquals(300, chart.getScreenYFromChart(-10), 1e-9);
    assertEquals(0, chart.getScreenYFromChart(10), 1e-9);
  }

  @Test
  void aPenWithoutDashesHasNoDashAttribute() {
    String svg =
        Medium.draw(
                sheet("t"),
                g -> {
                  g.setStroke(new BasicStroke(2));
                  g.setColor(Color.BLACK);
                  g.draw(new Line2D.Double(0, 0, 1, 1));
                })
            .svg();
    assertFalse(svg.contains("dasharray"), svg);
  }

  /** Reads SVG line by line. */
  private static final class Figures {
    private Figures() {}

    static String line(String svg, int line) {
      return svg.lines().toList().get(line);
    }
  }
}
