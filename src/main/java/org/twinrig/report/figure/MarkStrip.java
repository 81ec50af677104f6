package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.twinrig.band.Band;
import org.twinrig.reliability.Mark;

/**
 * The strip under a frequency axis: full bar reliable, half bar caution, diagonal hatching
 * unreliable, gap no data. It needs no colour to be read.
 */
final class MarkStrip {
  static final int HEIGHT = 12;
  private static final double HATCH_STEP = 4;

  private final List<Run> runs;

  private MarkStrip(List<Run> runs) {
    this.runs = runs;
  }

  /** One band's mark; {@code empty} when there is nothing to mark. */
  record Cell(Band band, Mark mark, boolean empty) {}

  /** Adjacent bands that look alike, Hz. */
  record Run(double fromHz, double toHz, Mark mark) {}

  static MarkStrip of(List<Cell> cells) {
    List<Run> runs = new ArrayList<>();
    for (Cell cell : cells) {
      if (cell.empty) {
        continue;
      }
      int last = runs.size() - 1;
      boolean joins =
          last >= 0
              && runs.get(last).mark == cell.mark
              && runs.get(last).toHz == cell.band.lowerHz();
      if (joins) {
        runs.set(last, new Run(runs.get(last).fromHz, cell.band.upperHz(), cell.mark));
      } else {
        runs.add(new Run(cell.band.lowerHz(), cell.band.upperHz(), cell.mark));
      }
    }
    return new MarkStrip(List.copyOf(runs));
  }

  List<Run> runs() {
    return runs;
  }

  void paint(Graphics2D g, DoubleUnaryOperator xOfHz, double top) {
    for (Run run : runs) {
      double left = xOfHz.applyAsDouble(run.fromHz);
      double right = xOfHz.applyAsDouble(run.toHz);
      bar(g, run.mark, new Rectangle2D.Double(left, top, right - left, HEIGHT));
    }
  }

  static void bar(Graphics2D g, Mark mark, Rectangle2D.Double box) {
    g.setColor(Ink.MARK);
    switch (mark) {
      case RELIABLE -> g.fill(box);
      case CAUTION ->
          g.fill(new Rectangle2D.Double(box.x, box.y + box.height / 2, box.width, box.height / 2));
      case UNRELIABLE -> hatch(g, box);
    }
  }

  private static void hatch(Graphics2D g, Rectangle2D.Double box) {
    g.setStroke(Ink.THIN);
    g.draw(box);
    // Each line is cut to the box by hand: a clip would need an id in the page.
    for (double start = box.x - box.height; start < box.x + box.width; start += HATCH_STEP) {
      double left = Math.max(start, box.x);
      double right = Math.min(start + box.height, box.x + box.width);
      if (right > left) {
        double bottom = box.y + box.height;
        g.draw(new Line2D.Double(left, bottom - (left - start), right, bottom - (right - start)));
      }
    }
  }

  /** The strip explained in words, from a point to the right. */
  static void legend(Graphics2D g, double x, double y) {
    double at = x;
    g.setFont(Ink.SMALL);
    for (Mark mark : Mark.values()) {
      bar(g, mark, new Rectangle2D.Double(at, y - 8, 18, 9));
      g.setColor(Ink.FAINT_TEXT);
      g.setFont(Ink.SMALL);
      Words.after(g, mark.word(), at + 22, y);
      at += 30 + 5.2 * mark.word().length();
    }
    g.setColor(Ink.FAINT_TEXT);
    Words.after(g, "gap: no data", at, y);
  }
}
