package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Writes a recorded drawing as SVG 1.1: paths in whole hundredths, words as selectable text in the
 * reader's own fonts, ids that begin with the drawing's name.
 */
final class SvgText {
  private final String name;
  private final StringBuilder body = new StringBuilder(32_768);
  private final List<Rectangle2D> clips = new ArrayList<>();

  private SvgText(String name) {
    this.name = name;
  }

  static String of(Medium.Sheet sheet, List<Recording.Item> items) {
    SvgText svg = new SvgText(sheet.name());
    items.forEach(svg::item);
    String head =
        String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %1$d %2$d\" width=\"%1$d\""
                + " height=\"%2$d\" role=\"img\" aria-labelledby=\"%3$s-t %3$s-d\">"
                + "<title id=\"%3$s-t\">%4$s</title><desc id=\"%3$s-d\">%5$s</desc>",
            sheet.width(),
            sheet.height(),
            escaped(sheet.name()),
            escaped(sheet.title()),
            escaped(sheet.alt()));
    return head + "\n" + svg.definitions() + svg.body + "</svg>\n";
  }

  private void item(Recording.Item item) {
    if (item instanceof Recording.Line line) {
      body.append("<path fill=\"none\" stroke=\"").append(hex(line.colour())).append('"');
      pen(line.stroke());
      path(line.path(), line.clip());
    } else if (item instanceof Recording.Fill fill) {
      body.append("<path fill=\"").append(hex(fill.colour())).append('"');
      path(fill.shape(), fill.clip());
    } else if (item instanceof Recording.Text text) {
      text(text);
    }
  }

  private void pen(BasicStroke stroke) {
    attribute("stroke-width", number(hundredths(stroke.getLineWidth())));
    if (stroke.getLineJoin() == BasicStroke.JOIN_ROUND) {
      attribute("stroke-linejoin", "round");
    }
    if (stroke.getEndCap() == BasicStroke.CAP_ROUND) {
      attribute("stroke-linecap", "round");
    }
    float[] dashes = stroke.getDashArray();
    if (dashes != null) {
      List<String> lengths = new ArrayList<>();
      for (float dash : dashes) {
        lengths.add(number(hundredths(dash)));
      }
      attribute("stroke-dasharray", String.join(" ", lengths));
    }
  }

  private void path(Shape shape, Optional<Rectangle2D> clip) {
    if (clip.isPresent()) {
      if (!clips.contains(clip.get())) {
        clips.add(clip.get());
      }
      attribute("clip-path", "url(#" + name + "-c" + clips.indexOf(clip.get()) + ")");
    }
    body.append(" d=\"");
    data(shape);
    body.append("\"/>\n");
  }

  /** Path data relative to the last rounded point, so that rounding does not add up. */
  private void data(Shape shape) {
    double[] point = new double[6];
    long x = 0;
    long y = 0;
    for (PathIterator p = shape.getPathIterator(null, 0.05); !p.isDone(); p.next()) {
      int kind = p.currentSegment(point);
      if (kind == PathIterator.SEG_CLOSE) {
        body.append('z');
        continue;
      }
      long toX = hundredths(point[0]);
      long toY = hundredths(point[1]);
      if (kind == PathIterator.SEG_MOVETO) {
        body.append('M').append(number(toX)).append(' ').append(number(toY));
      } else {
        body.append('l').append(number(toX - x)).append(toY < y ? "" : " ").append(number(toY - y));
      }
      x = toX;
      y = toY;
    }
  }

  private void text(Recording.Text text) {
    body.append("<text");
    attribute("x", number(hundredths(text.at().getX())));
    attribute("y", number(hundredths(text.at().getY())));
    // Generic families only: a family of this machine may not be on the reader's.
    boolean serif = text.font().getName().equals(Font.SERIF);
    attribute("font-family", serif ? "serif" : "sans-serif");
    attribute("font-size", Integer.toString(text.font().getSize()));
    if (text.font().isBold()) {
      attribute("font-weight", "bold");
    }
    if (text.lie() != Words.Lie.START) {
      attribute("text-anchor", text.lie().svg());
    }
    attribute("fill", hex(text.colour()));
    body.append('>').append(escaped(text.words())).append("</text>\n");
  }

  private String definitions() {
    StringBuilder text = new StringBuilder();
    for (int k = 0; k < clips.size(); k++) {
      Rectangle2D c = clips.get(k);
      text.append(
          String.format(
              Locale.ROOT,
              "<clipPath id=\"%s-c%d\"><rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/></clipPath>",
              name,
              k,
              number(hundredths(c.getX())),
              number(hundredths(c.getY())),
              number(hundredths(c.getWidth())),
              number(hundredths(c.getHeight()))));
    }
    return text.isEmpty() ? "" : text.append('\n').toString();
  }

  private void attribute(String attribute, String value) {
    body.append(' ').append(attribute).append("=\"").append(value).append('"');
  }

  private static long hundredths(double value) {
    return Math.round(value * 100);
  }

  /** Hundredths as the shortest decimal. */
  static String number(long hundredths) {
    long whole = Math.abs(hundredths) / 100;
    long rest = Math.abs(hundredths) % 100;
    String sign = hundredths < 0 ? "-" : "";
    if (rest == 0) {
      return sign + whole;
    }
    String digits = rest % 10 == 0 ? "" + rest / 10 : (rest < 10 ? "0" : "") + rest;
    return sign + (whole == 0 ? "" : whole) + "." + digits;
  }

  static String hex(Color colour) {
    return String.format(Locale.ROOT, "#%06x", colour.getRGB() & 0xFFFFFF);
  }

  /** Text for SVG: control characters that XML 1.0 does not allow (2.2) become a question mark. */
  static String escaped(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "?")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
