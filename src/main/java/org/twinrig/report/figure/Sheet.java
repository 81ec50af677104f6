package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.List;
import org.twinrig.report.figure.Drawing.Lie;

/** The sheet of a figure: what is written at its head and foot, and plots between them. */
final class Sheet {
  static final int WIDTH = 780;
  private static final int LEFT = 62;
  private static final int RIGHT = WIDTH - 18;
  private static final int TOP = 62;
  private static final int KEY_LINE = 54;
  private static final int SIDE = 330;
  private static final int ROW = 17;
  private static final int BETWEEN_COLUMNS = 40;

  private final Drawing drawing = new Drawing();
  private final String title;
  private String small;
  private int y = TOP;

  /** Title (a finding), how to read the figure, and the study's fingerprint, empty without one. */
  Sheet(String title, String subtitle, String fingerprint) {
    this.title = title;
    this.small = fingerprint.isEmpty() ? "" : "study " + fingerprint;
    int place = RIGHT - LEFT;
    drawing.text(title, LEFT, 22, Lie.START, Ink.TITLE.fitting(title, place));
    drawing.text(subtitle, LEFT, 38, Lie.START, Ink.NOTE.faint().fitting(subtitle, place));
  }

  /** One plot over frequency, its key above, the marks below if there are any. */
  Sheet overFrequency(Plot plot, List<Stretch> marks) {
    Axis up = plot.up();
    int width = RIGHT - LEFT;
    Rectangle box = new Rectangle(LEFT, TOP, width, (int) Math.round(up.height(width / 3.0)));
    plot.paint(drawing, box);
    plot.paintKeyBefore(drawing, RIGHT, KEY_LINE);
    y = TOP + box.height + 48;
    if (!marks.isEmpty()) {
      MarkStrip.paint(drawing, marks, new Rectangle(LEFT, y - 8, width, MarkStrip.HEIGHT));
      y += 19;
      MarkStrip.legend(drawing, LEFT, y);
    }
    if (up.perDecade() > 0) {
      String scale = "1 decade = " + Math.round(up.perDecade()) + " dB";
      small = small.isEmpty() ? scale : scale + " · " + small;
    }
    return this;
  }

  /** One plot on a square, its key and further words beside it. */
  Sheet square(Plot plot, List<String> notes) {
    int beside = LEFT + SIDE + 24;
    plot.paint(drawing, new Rectangle(LEFT, TOP, SIDE, SIDE));
    int at = plot.paintKeyBelow(drawing, beside, TOP + 12, ROW) + ROW / 2;
    for (String note : notes) {
      drawing.text(note, beside, at, Lie.START, Ink.NOTE.faint());
      at += ROW;
    }
    y = TOP + SIDE + 42;
    return this;
  }

  /** The key of plots that stand in rows. */
  Sheet key(Plot plot) {
    plot.paintKeyBefore(drawing, RIGHT, KEY_LINE);
    y += 20;
    return this;
  }

  /** Plots in columns, row by row below what is there. */
  Sheet rows(List<Plot> plots, int columns, int height) {
    int width = (RIGHT - LEFT - (columns - 1) * BETWEEN_COLUMNS) / columns;
    for (int k = 0; k < plots.size(); k++) {
      int left = LEFT + k % columns * (width + BETWEEN_COLUMNS);
      plots.get(k).paint(drawing, new Rectangle(left, y, width, height));
      if (k % columns == columns - 1 || k == plots.size() - 1) {
        y += height + plots.get(k).below();
      }
    }
    return this;
  }

  /** Small print that explains shapes. */
  Sheet foot(String words) {
    drawing.text(words, LEFT, y, Lie.START, Ink.SMALL.faint());
    return this;
  }

  /** The finished figure with the name of its files and what can be seen in it, in words. */
  Figure figure(String name, String alt) {
    drawing.text(small, RIGHT, y, Lie.END, Ink.SMALL.faint());
    int height = y + 17;
    drawing.paper(WIDTH, height);
    return new Figure(
        name,
        title,
        alt,
        SvgText.of(name, title, alt, WIDTH, height, drawing),
        () -> PngImage.of(WIDTH, height, drawing));
  }
}
