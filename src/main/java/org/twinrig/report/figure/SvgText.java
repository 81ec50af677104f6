package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToIntBiFunction;

/**
 * Writes a drawing as SVG 1.1: paths in whole hundredths, words as selectable text in the reader's
 * own fonts, ids that begin with the drawing's name.
 */
final class SvgText {
  static final int TELEPHONE = 330;

  private final String name;
  private final StringBuilder body = new StringBuilder(32_768);
  private final List<Rectangle2D> clips = new ArrayList<>();

  private SvgText(String name, Drawing drawing) {
    this.name = name;
    drawing.items().forEach(this::item);
  }

  /** A drawing with its title and its description for those who do not see it. */
  static String of(String name, String title, String alt, int width, int height, Drawing drawing) {
    SvgText svg = new SvgText(name, drawing);
    return """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %1$s %2$s" width="%1$s" height="%2$s"\
         role="img" aria-labelledby="%3$s-t %3$s-d">\
        <title id="%3$s-t">%4$s</title><desc id="%3$s-d">%5$s</desc>"""
            .formatted(width, height, name, escaped(title), escaped(alt))
        + "\n"
        + svg.definitions()
        + svg.body
        + "</svg>\n";
  }

  /** A drawing as wide as its place on a page; the words beside it tell what it shows. */
  static String inline(
      String name, String style, int width, ToIntBiFunction<Drawing, Integer> painter) {
    Drawing drawing = new Drawing();
    int height = painter.applyAsInt(drawing, width);
    SvgText svg = new SvgText(name, drawing);
    return "<svg class=\"%s\" viewBox=\"0 0 %s %s\" width=\"100%%\" aria-hidden=\"true\">%s%s</svg>"
        .formatted(style, width, height, svg.definitions(), svg.body);
  }

  /**
   * A drawing made twice, for the width of a page and for that of a telephone, so that type keeps
   * its size; of the classes {@code wide} and {@code narrow} the page shows the one that fits. One
   * of a style may have curves: its ids are made from the style.
   */
  static String wideAndNarrow(String style, int wide, ToIntBiFunction<Drawing, Integer> painter) {
    return inline(style + "-wide", style + " wide", wide, painter)
        + inline(style + "-narrow", style + " narrow", TELEPHONE, painter);
  }

  private void item(Drawing.Item item) {
    if (item instanceof Drawing.Line line) {
      body.append("<path fill=\"none\"");
      stroke(line.pen());
      path(line.path(), line.clip());
    } else if (item instanceof Drawing.Fill fill) {
      body.append("<path");
      attribute("fill", hex(fill.colour()));
      path(fill.shape(), fill.clip());
    } else if (item instanceof Drawing.Text text) {
      text(text);
    }
  }

  private void stroke(Ink.Pen pen) {
    BasicStroke stroke = pen.stroke();
    attribute("stroke", hex(pen.colour()));
    attribute("stroke-width", number(hundredths(stroke.getLineWidth())));
    if (stroke.getLineJoin() == BasicStroke.JOIN_ROUND) {
      attribute("stroke-linejoin", "round");
    }
    if (stroke.getEndCap() == BasicStroke.CAP_ROUND) {
      attribute("stroke-linecap", "round");
    }
    float[] dashes = stroke.getDashArray();
    if (dashes != null) {
      attribute(
          "stroke-dasharray", number(hundredths(dashes[0])) + " " + number(hundredths(dashes[1])));
    }
  }

  private void path(Shape shape, Optional<Rectangle2D> clip) {
    if (clip.isPresent()) {
      if (!clips.contains(clip.get())) {
        clips.add(clip.get());
      }
      attribute("clip-path", "url(#" + name + "-c" + clips.indexOf(clip.get()) + ")");
    }
    attribute("d", data(shape));
    body.append("/>\n");
  }

  /** Path data relative to the last rounded point, so that rounding does not add up. */
  static String data(Shape shape) {
    StringBuilder data = new StringBuilder();
    double[] point = new double[6];
    long x = 0;
    long y = 0;
    for (PathIterator p = shape.getPathIterator(null, 0.05); !p.isDone(); p.next()) {
      int kind = p.currentSegment(point);
      if (kind == PathIterator.SEG_CLOSE) {
        data.append('z');
        continue;
      }
      long toX = hundredths(point[0]);
      long toY = hundredths(point[1]);
      if (kind == PathIterator.SEG_MOVETO) {
        data.append('M').append(number(toX)).append(' ').append(number(toY));
      } else {
        data.append('l').append(number(toX - x)).append(toY < y ? "" : " ").append(number(toY - y));
      }
      x = toX;
      y = toY;
    }
    return data.toString();
  }

  private void text(Drawing.Text text) {
    body.append("<text");
    attribute("x", number(hundredths(text.x())));
    attribute("y", number(hundredths(text.y())));
    // Generic families only: a family of this machine may not be on the reader's.
    Font font = text.type().font();
    attribute("font-family", font.getName().equals(Font.SERIF) ? "serif" : "sans-serif");
    attribute("font-size", Integer.toString(font.getSize()));
    if (font.isBold()) {
      attribute("font-weight", "bold");
    }
    if (text.lie() != Drawing.Lie.START) {
      attribute("text-anchor", text.lie().name().toLowerCase(Locale.ROOT));
    }
    attribute("fill", hex(text.type().colour()));
    body.append('>').append(escaped(text.words())).append("</text>\n");
  }

  private String definitions() {
    StringBuilder text = new StringBuilder();
    for (int k = 0; k < clips.size(); k++) {
      text.append(
          "<clipPath id=\"%s-c%s\"><path d=\"%s\"/></clipPath>"
              .formatted(name, k, data(clips.get(k))));
      text.append('\n');
    }
    return text.toString();
  }

  private void attribute(String attribute, String value) {
    body.append(' ').append(attribute).append("=\"").append(value).append('"');
  }

  private static long hundredths(double value) {
    return Math.round(value * 100);
  }

  /** Hundredths as the shortest decimal. */
  static String number(long hundredths) {
    String decimal = BigDecimal.valueOf(hundredths, 2).stripTrailingZeros().toPlainString();
    return decimal.startsWith("0.") || decimal.startsWith("-0.")
        ? decimal.replaceFirst("0", "")
        : decimal;
  }

  private static String hex(Color colour) {
    return String.format(Locale.ROOT, "#%06x", colour.getRGB() & 0xFFFFFF);
  }

  /** Text for SVG: control characters that XML 1.0 does not allow (2.2) become a question mark. */
  private static String escaped(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "?")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
