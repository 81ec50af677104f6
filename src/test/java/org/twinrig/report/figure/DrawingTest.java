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
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.twinrig.report.figure.Drawing.Lie;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class DrawingTest {
  private static final String HOSTILE = "<script>alert(\"x\")</script> & =cmd()|'/c'\u0007";
  private static final Ink.Pen BLUE = new Ink.Pen(Color.BLUE, Ink.THIN);

  private static Drawing drawing(Consumer<Drawing> painter) {
    Drawing drawing = new Drawing();
    painter.accept(drawing);
    return drawing;
  }

  private static String svg(Drawing drawing) {
    return SvgText.of("transfer-a", "t", "alt of t", 200, 100, drawing);
  }

  private static String line(String svg, int line) {
    return svg.lines().toList().get(line);
  }

  /** Three segments as the plotting library hands them over, the colour set before each. */
  private static Drawing segments() {
    Consumer<Graphics2D> painter =
        g -> {
          for (int k = 0; k < 3; k++) {
            g.setColor(Color.RED);
            g.setColor(Ink.NEW_FIXTURE);
            g.setStroke(Ink.DASHED);
            g.draw(new Line2D.Double(5 * k, k, 5 * (k + 1), k + 1));
          }
        };
    return drawing(d -> d.painted(painter, 10, 20, true));
  }

  private static Document xml(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void segmentsThatFollowOnEachOtherBecomeOnePath() {
    assertEquals(1, segments().items().size());
    assertEquals(
        "<path fill=\"none\" stroke=\"#1f3a6e\" stroke-width=\"1.1\" stroke-linejoin=\"round\""
            + " stroke-dasharray=\"5 3\" d=\"M10 20l5 1l5 1l5 1\"/>",
        line(svg(segments()), 1));
  }

  @Test
  void aPieceOfAnotherPenOrElsewhereIsNotJoined() {
    Drawing pens =
        drawing(
            d -> {
              d.line(0, 0, 5, 5, BLUE);
              d.line(5, 5, 9, 9, new Ink.Pen(Color.RED, Ink.THIN));
              d.line(9, 9, 7, 7, new Ink.Pen(Color.RED, Ink.DOTTED));
            });
    assertEquals(3, pens.items().size());
    Drawing apart =
        drawing(
            d -> {
              d.line(0, 0, 5, 5, BLUE);
              d.line(6, 6, 9, 9, BLUE);
            });
    assertTrue(svg(apart).contains("d=\"M0 0l5 5M6 6l3 3\""), svg(apart));
  }

  @Test
  void whatIsClearIsNotTaken() {
    Consumer<Graphics2D> clear =
        g -> {
          g.setColor(new Color(255, 255, 255, 0));
          g.fill(new Rectangle2D.Double(0, 0, 10, 10));
          g.draw(new Line2D.Double(0, 0, 5, 5));
        };
    assertTrue(drawing(d -> d.painted(clear, 0, 0, true)).items().isEmpty());
  }

  @Test
  void whatReachesOutOfTheFrameIsCutInBothMedia() throws Exception {
    Consumer<Graphics2D> painter =
        g -> {
          g.setClip(new Rectangle2D.Double(10, 10, 50, 50));
          g.setColor(Color.BLUE);
          g.setStroke(Ink.THIN);
          g.draw(new Line2D.Double(20, 20, 90, 20));
        };
    Drawing cut = drawing(d -> d.painted(painter, 0, 0, true));
    NodeList paths = xml(svg(cut)).getElementsByTagName("path");
    assertEquals("M10 10l50 0l0 50l-50 0l0-50z", ((Element) paths.item(0)).getAttribute("d"));
    assertEquals("url(#transfer-a-c0)", ((Element) paths.item(1)).getAttribute("clip-path"));
    assertEquals(Color.BLUE.getRGB(), png(cut).getRGB(100, 40));
    assertEquals(Color.BLACK.getRGB(), png(cut).getRGB(160, 40), "beyond the clip is nothing");
    Drawing whole = drawing(d -> d.painted(painter, 0, 0, false));
    assertEquals(Color.BLUE.getRGB(), png(whole).getRGB(160, 40), "points are not cut");
  }

  private static BufferedImage png(Drawing drawing) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(PngImage.of(200, 100, drawing)));
  }

  @Test
  void wordsLieAsAskedInTheReadersOwnFonts() {
    String svg =
        svg(
            drawing(
                d -> {
                  d.text("a", 1, 2, Lie.START, Ink.TITLE);
                  d.text("b", 3, 4, Lie.MIDDLE, Ink.NOTE);
                  d.text("c", 5.25, 6, Lie.END, Ink.NOTE.faint());
                }));
    assertEquals(
        "<text x=\"1\" y=\"2\" font-family=\"serif\" font-size=\"16\" font-weight=\"bold\""
            + " fill=\"#222226\">a</text>",
        line(svg, 1));
    assertEquals(
        "<text x=\"3\" y=\"4\" font-family=\"sans-serif\" font-size=\"11\" text-anchor=\"middle\""
            + " fill=\"#222226\">b</text>",
        line(svg, 2));
    assertEquals(
        "<text x=\"5.25\" y=\"6\" font-family=\"sans-serif\" font-size=\"11\" text-anchor=\"end\""
            + " fill=\"#63605a\">c</text>",
        line(svg, 3));
  }

  @Test
  void hostileTextStaysText() throws Exception {
    Drawing words = drawing(d -> d.text(HOSTILE, 0, 0, Lie.START, Ink.NOTE));
    String svg = SvgText.of("a", HOSTILE, "alt of " + HOSTILE, 200, 100, words);
    Document document = xml(svg);
    String shown = HOSTILE.replace('\u0007', '?');
    assertFalse(svg.contains("<script"));
    assertEquals(shown, document.getElementsByTagName("title").item(0).getTextContent());
    assertEquals("alt of " + shown, document.getElementsByTagName("desc").item(0).getTextContent());
    assertEquals(shown, document.getElementsByTagName("text").item(0).getTextContent());
  }

  @Test
  void theSameDrawingGivesTheSameBytes() throws IOException {
    assertEquals(svg(segments()), svg(segments()));
    assertArrayEquals(PngImage.of(200, 100, segments()), PngImage.of(200, 100, segments()));
    assertEquals(400, png(segments()).getWidth());
    assertEquals(200, png(segments()).getHeight());
  }

  @Test
  void numbersAreTheShortestDecimals() {
    assertEquals("0", SvgText.number(0));
    assertEquals("-.05", SvgText.number(-5));
    assertEquals(".5", SvgText.number(50));
    assertEquals("12.34", SvgText.number(1234));
    assertEquals("-7", SvgText.number(-700));
  }

  @Test
  void aPenWithoutDashesHasNoDashAttribute() {
    String svg =
        svg(drawing(d -> d.line(0, 0, 1, 1, new Ink.Pen(Color.BLACK, new BasicStroke(2)))));
    assertFalse(svg.contains("dasharray"), svg);
  }
}
