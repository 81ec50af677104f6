package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.Drawing.Lie;

/**
 * The strip under a frequency axis: full bar reliable, half bar caution, diagonal hatching
 * unreliable, gap no data. It needs no colour to be read.
 */
public final class MarkStrip {
  static final int HEIGHT = 12;
  static final int ON_A_PAGE = 540;
  private static final double HATCH_STEP = 4;
  private static final double VEIL_STEP = 14;
  private static final Axis AXIS = Axis.frequency();

  private MarkStrip() {}

  /** The strip by itself, 20 Hz to 20 kHz, as an inline SVG as wide as its place on a page. */
  public static String svg(List<Stretch> stretches, int height) {
    return SvgText.wideAndNarrow(
        "strip",
        ON_A_PAGE,
        (d, width) -> {
          paint(d, stretches, new Rectangle(1, 1, width - 2, height - 2));
          return height;
        });
  }

  /** SVG path data of one bar: to be filled; the lines of {@link Mark#UNRELIABLE} to be drawn. */
  public static String path(Mark mark, Rectangle2D box) {
    return SvgText.data(shape(mark, box));
  }

  static void paint(Drawing d, List<Stretch> stretches, Rectangle box) {
    stretches.forEach(s -> s.mark().ifPresent(m -> bar(d, m, place(s, box))));
  }

  /** The strip below a plot and its ticks; returns where it ends, px. */
  static int paintBelow(Drawing d, List<Stretch> stretches, Rectangle plot) {
    int top = plot.y + plot.height + 18;
    paint(d, stretches, new Rectangle(plot.x, top, plot.width, HEIGHT));
    return top + HEIGHT + 2;
  }

  /** Hatches what must not be read from a plot. */
  static void veil(Drawing d, List<Stretch> stretches, Rectangle plot) {
    for (Stretch s : stretches) {
      if (s.is(Mark.UNRELIABLE)) {
        d.draw(hatching(place(s, plot), VEIL_STEP), new Ink.Pen(Ink.AXIS, Ink.HAIR));
      }
    }
  }

  private static Rectangle2D place(Stretch s, Rectangle box) {
    double left = box.x + box.width * AXIS.share(s.fromHz());
    double right = box.x + box.width * AXIS.share(s.toHz());
    return new Rectangle2D.Double(left, box.y, right - left, box.height);
  }

  private static void bar(Drawing d, Mark mark, Rectangle2D box) {
    if (mark == Mark.UNRELIABLE) {
      d.draw(shape(mark, box), new Ink.Pen(Ink.MARK, Ink.THIN));
    } else {
      d.fill(shape(mark, box), Ink.MARK);
    }
  }

  private static Path2D shape(Mark mark, Rectangle2D box) {
    if (mark == Mark.CAUTION) {
      double half = box.getHeight() / 2;
      return new Path2D.Double(
          new Rectangle2D.Double(box.getX(), box.getY() + half, box.getWidth(), half));
    }
    Path2D shape = new Path2D.Double(box);
    if (mark == Mark.UNRELIABLE) {
      shape.append(hatching(box, HATCH_STEP), false);
    }
    return shape;
  }

  /** Lines that rise to the right, each cut to the box by hand: a clip would need an id. */
  private static Path2D hatching(Rectangle2D box, double step) {
    Path2D lines = new Path2D.Double();
    double rise = box.getHeight();
    for (double start = box.getX() - rise; start < box.getMaxX(); start += step) {
      double left = Math.max(start, box.getX());
      double right = Math.min(start + rise, box.getMaxX());
      if (right > left) {
        lines.moveTo(left, box.getMaxY() - (left - start));
        lines.lineTo(right, box.getMaxY() - (right - start));
      }
    }
    return lines;
  }

  /** The strip explained in words, from a point to the right. */
  static void legend(Drawing d, double x, double y) {
    double at = x;
    for (Mark mark : Mark.values()) {
      bar(d, mark, new Rectangle2D.Double(at, y - 8, 18, 9));
      d.text(mark.word(), at + 22, y, Lie.START, Ink.SMALL.faint());
      at += 30 + 5.2 * mark.word().length();
    }
    d.text("gap: no data", at, y, Lie.START, Ink.SMALL.faint());
  }
}
