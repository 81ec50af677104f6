package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Names beside dots, each where it covers no dot and no other name: right of its dot where there is
 * room, otherwise left of it, otherwise above or below with a thin line to it.
 */
final class DotLabels {
  private static final double HEIGHT = 11;
  private static final double GAP = 7;
  private static final double[] SHIFTS = {0, -13, 13, -26, 26, -39, 39};

  private final Rectangle frame;
  private final List<Rectangle2D> taken = new ArrayList<>();

  /** Nothing placed yet; names stay inside a frame. */
  DotLabels(Rectangle frame) {
    this.frame = frame;
  }

  /** A dot that no name may cover. */
  void keepClear(double x, double y) {
    taken.add(new Rectangle2D.Double(x - 4, y - 4, 8, 8));
  }

  /** Writes a name beside the dot at a place. */
  void write(Drawing d, String name, double x, double y) {
    Rectangle2D free = free(Ink.SMALL.width(name), x, y);
    taken.add(free);
    if (Math.abs(free.getCenterY() - y) > HEIGHT) {
      double end = free.getX() > x ? free.getX() - 1 : free.getMaxX() + 1;
      d.line(x, y, end, free.getCenterY(), Ink.HAIRLINE);
    }
    d.text(name, free.getX(), free.getMaxY() - 2, Drawing.Lie.START, Ink.SMALL);
  }

  private Rectangle2D free(double width, double x, double y) {
    for (double shift : SHIFTS) {
      for (double left : new double[] {x + GAP, x - GAP - width}) {
        Rectangle2D place =
            new Rectangle2D.Double(left, y + shift - HEIGHT / 2 + 0.5, width, HEIGHT);
        if (frame.contains(place) && taken.stream().noneMatch(place::intersects)) {
          return place;
        }
      }
    }
    return new Rectangle2D.Double(x + GAP, y - HEIGHT / 2, width, HEIGHT);
  }
}
