package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * One quantity against another of the same sort on a square, so that what is equal lies on the
 * diagonal. The key and further words stand beside it. Built up by {@code with…} calls in drawing
 * order, painted once per medium.
 */
@SuppressWarnings("ArrayRecordComponent")
final class CrossPlot {
  static final int WIDTH = 720;
  static final int HEIGHT = 450;
  private static final int LEFT = 62;
  private static final int TOP = 62;
  private static final int SIDE = 330;
  private static final int BESIDE = LEFT + SIDE + 24;
  private static final int LINE = 17;
  private static final double DOT = 3.2;

  private final Texts texts;
  private final Axis axis;
  private final List<Ribbon> ribbons = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Dot> dots = new ArrayList<>();
  private final List<Key> keys = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  CrossPlot(Texts texts, Axis axis) {
    this.texts = texts;
    this.axis = axis;
  }

  /** What is written around the square. */
  record Texts(String title, String subtitle, String across, String up, String fingerprint) {}

  /** Both axes: they are alike, so that equal things lie on the diagonal. */
  record Axis(double from, double to, boolean logarithmic, List<Tick> ticks) {
    private double share(double value) {
      return logarithmic
          ? Math.log(value / from) / Math.log(to / from)
          : (value - from) / (to - from);
    }

    private double held(double value) {
      return Math.max(from, Math.min(to, value));
    }
  }

  /** A tick of both axes. */
  record Tick(double value, String label) {}

  /** A filled band between two curves. */
  record Ribbon(double[] across, double[] low, double[] high, Color colour) {}

  /** A curve through points. */
  record Line(double[] across, double[] up, Color colour, Stroke stroke) {}

  /** How a dot looks; the shapes keep apart without colour. */
  enum Look {
    FULL,
    OPEN,
    TRIANGLE
  }

  /** A dot, with an interval upwards and downwards where {@code low < high}. */
  record Dot(double across, double up, double low, double high, Look look, String name) {
    static Dot of(double across, double up, Look look, String name) {
      return new Dot(across, up, up, up, look, name);
    }
  }

  private record Key(String words, Object sample) {}

  CrossPlot withRibbon(Ribbon ribbon, String words) {
    ribbons.add(ribbon);
    keys.add(new Key(words, ribbon));
    return this;
  }

  CrossPlot withLine(Line line, String words) {
    lines.add(line);
    keys.add(new Key(words, line));
    return this;
  }

  CrossPlot withDots(List<Dot> some, String words) {
    if (!some.isEmpty()) {
      dots.addAll(some);
      keys.add(new Key(words, some.get(0)));
    }
    return this;
  }

  /** A line of words under the key. */
  CrossPlot withNote(String words) {
    notes.add(words);
    return this;
  }

  private double x(double value) {
    return LEFT + SIDE * axis.share(axis.held(value));
  }

  private double y(double value) {
    return TOP + SIDE * (1 - axis.share(axis.held(value)));
  }

  void paint(Graphics2D g) {
    g.setColor(Ink.PAPER);
    g.fill(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    paintGrid(g);
    ribbons.forEach(r -> paintRibbon(g, r));
    lines.forEach(l -> paintLine(g, l));
    dots.forEach(d -> paintDot(g, d));
    DotLabels labels = new DotLabels(new Rectangle2D.Double(LEFT, TOP, SIDE, SIDE));
    dots.forEach(d -> labels.keepClear(x(d.across), y(d.up)));
    dots.stream()
        .filter(d -> !d.name.isEmpty())
        .forEach(d -> labels.write(g, d.name, x(d.across), y(d.up)));
    paintFrame(g);
    paintTexts(g);
    paintKeys(g);
  }

  private void paintGrid(Graphics2D g) {
    g.setStroke(Ink.HAIR);
    g.setColor(Ink.GRID);
    for (Tick tick : axis.ticks) {
      g.draw(new Line2D.Double(x(tick.value), TOP, x(tick.value), TOP + SIDE));
      g.draw(new Line2D.Double(LEFT, y(tick.value), LEFT + SIDE, y(tick.value)));
    }
  }

  private void paintRibbon(Graphics2D g, Ribbon r) {
    Path2D.Double path = new Path2D.Double();
    for (int k = 0; k < r.across.length; k++) {
      to(path, k == 0, x(r.across[k]), y(r.high[k]));
    }
    for (int k = r.across.length - 1; k >= 0; k--) {
      to(path, false, x(r.across[k]), y(r.low[k]));
    }
    path.closePath();
    g.setColor(r.colour);
    g.fill(path);
  }

  private void paintLine(Graphics2D g, Line line) {
    Path2D.Double path = new Path2D.Double();
    for (int k = 0; k < line.across.length; k++) {
      to(path, k == 0, x(line.across[k]), y(line.up[k]));
    }
    g.setColor(line.colour);
    g.setStroke(line.stroke);
    g.draw(path);
  }

  private static void to(Path2D.Double path, boolean first, double x, double y) {
    if (first) {
      path.moveTo(x, y);
    } else {
      path.lineTo(x, y);
    }
  }

  private void paintDot(Graphics2D g, Dot dot) {
    double x = x(dot.across);
    if (dot.low < dot.high) {
      g.setColor(Ink.TEXT);
      g.setStroke(Ink.THIN);
      g.draw(new Line2D.Double(x, y(dot.low), x, y(dot.high)));
      g.draw(new Line2D.Double(x - 3, y(dot.low), x + 3, y(dot.low)));
      g.draw(new Line2D.Double(x - 3, y(dot.high), x + 3, y(dot.high)));
    }
    mark(g, dot.look, x, y(dot.up));
  }

  private static void mark(Graphics2D g, Look look, double x, double y) {
    Path2D.Double triangle = new Path2D.Double();
    triangle.moveTo(x - 4, y - 3);
    triangle.lineTo(x + 4, y - 3);
    triangle.lineTo(x, y + 4);
    triangle.closePath();
    Ellipse2D.Double circle = new Ellipse2D.Double(x - DOT, y - DOT, 2 * DOT, 2 * DOT);
    g.setColor(look == Look.FULL ? Ink.NEW_FIXTURE : Ink.PAPER);
    g.fill(look == Look.TRIANGLE ? triangle : circle);
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.THIN);
    g.draw(look == Look.TRIANGLE ? triangle : circle);
  }

  private void paintFrame(Graphics2D g) {
    g.setStroke(Ink.THIN);
    g.setColor(Ink.AXIS);
    g.draw(new Rectangle2D.Double(LEFT, TOP, SIDE, SIDE));
    g.setFont(Ink.TICK);
    g.setColor(Ink.TEXT);
    for (Tick tick : axis.ticks) {
      Words.around(g, tick.label, x(tick.value), TOP + SIDE + 15);
      Words.before(g, tick.label, LEFT - 7, y(tick.value) + 4);
    }
  }

  private void paintTexts(Graphics2D g) {
    g.setColor(Ink.TEXT);
    g.setFont(Ink.TITLE);
    Words.after(g, texts.title, LEFT, 22);
    g.setFont(Ink.NOTE);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(g, texts.subtitle, LEFT, 38);
    g.setColor(Ink.TEXT);
    Words.after(g, texts.up, 8, 54);
    Words.before(g, texts.across, LEFT + SIDE, TOP + SIDE + 33);
    g.setFont(Ink.SMALL);
    g.setColor(Ink.FAINT_TEXT);
    Words.before(g, "study " + texts.fingerprint, WIDTH - 18, HEIGHT - 14);
  }

  private void paintKeys(Graphics2D g) {
    double y = TOP + 12;
    g.setFont(Ink.NOTE);
    for (Key key : keys) {
      sample(g, key.sample, y);
      g.setColor(Ink.TEXT);
      Words.after(g, key.words, BESIDE + 30, y);
      y += LINE;
    }
    y += LINE / 2.0;
    for (String note : notes) {
      g.setColor(Ink.FAINT_TEXT);
      Words.after(g, note, BESIDE, y);
      y += LINE;
    }
  }

  private static void sample(Graphics2D g, Object sample, double y) {
    if (sample instanceof Ribbon ribbon) {
      g.setColor(ribbon.colour);
      g.fill(new Rectangle2D.Double(BESIDE, y - 9, 22, 10));
    } else if (sample instanceof Line line) {
      g.setColor(line.colour);
      g.setStroke(line.stroke);
      g.draw(new Line2D.Double(BESIDE, y - 4, BESIDE + 22, y - 4));
    } else if (sample instanceof Dot dot) {
      mark(g, dot.look, BESIDE + 11, y - 4);
    }
  }
}
