package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.report.figure.Drawing.Lie;

/**
 * Two axes and what is drawn between them, in drawing order. It is drawn at any place of any size;
 * the plotting library draws the layers, see {@link LayerPainter}.
 */
@SuppressWarnings("ArrayRecordComponent") // a drawing holds hundreds of points and is drawn once
final class Plot {
  private final Axis across;
  private final Axis up;
  private final boolean small;
  private final List<Layer> layers = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private final List<Key> keys = new ArrayList<>();
  private final List<String> names = new ArrayList<>();
  private Dots named = new Dots(new double[0], new double[0], Dot.FULL);

  private Plot(Axis across, Axis up, boolean small) {
    this.across = across;
    this.up = up;
    this.small = small;
  }

  static Plot of(Axis across, Axis up) {
    return new Plot(across, up, false);
  }

  /** A small one among others, with small type at its ticks. */
  static Plot small(Axis across, Axis up) {
    return new Plot(across, up, true);
  }

  /** What is drawn at places along both axes. */
  sealed interface Layer {}

  /** A curve through points; NaN breaks it. */
  record Line(double[] across, double[] up, Ink.Pen pen) implements Layer {}

  /** A filled band between two curves; NaN breaks it. */
  record Area(double[] across, double[] low, double[] high, Color colour) implements Layer {}

  /** Points that look alike; NaN is none. */
  record Dots(double[] across, double[] up, Dot dot) implements Layer {}

  /** How a point looks; the shapes keep apart without colour. */
  enum Dot {
    FULL(Ink.NEW_FIXTURE, true, 3.2),
    OPEN(Ink.PAPER, true, 3.2),
    TRIANGLE(Ink.PAPER, true, 4),
    POINT(Ink.TEXT, false, 2.6),
    SQUARE(Ink.TEXT, false, 3.5),
    RING(new Color(255, 255, 255, 0), true, 4.5),
    /** The end of an interval. */
    CAP(new Color(255, 255, 255, 0), true, 3);

    final Color fill;
    final boolean outlined;
    private final double radius;

    Dot(Color fill, boolean outlined, double radius) {
      this.fill = fill;
      this.outlined = outlined;
      this.radius = radius;
    }

    Shape at(double x, double y) {
      return switch (this) {
        case CAP -> new Line2D.Double(x - radius, y, x + radius, y);
        case SQUARE -> new Rectangle2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
        case TRIANGLE -> {
          Path2D.Double shape = new Path2D.Double();
          shape.moveTo(x - radius, y - 3);
          shape.lineTo(x + radius, y - 3);
          shape.lineTo(x, y + radius);
          shape.closePath();
          yield shape;
        }
        default -> new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
      };
    }
  }

  private record Note(String words, double across, double up, Lie lie, Ink.Type type) {}

  private record Key(String words, Layer sample) {}

  /** Adds a layer. */
  Plot with(Layer layer) {
    layers.add(layer);
    return this;
  }

  /** Adds a layer that the key explains. */
  Plot with(Layer layer, String words) {
    keys.add(new Key(words, layer));
    return with(layer);
  }

  Plot line(double[] x, double[] y, Ink.Pen pen) {
    return with(new Line(x, y, pen));
  }

  Plot line(double[] x, double[] y, Ink.Pen pen, String words) {
    return with(new Line(x, y, pen), words);
  }

  Plot area(double[] x, double[] low, double[] high, String words) {
    return with(new Area(x, low, high, Ink.BAND), words);
  }

  Plot dot(double x, double y, Dot dot) {
    return with(new Dots(new double[] {x}, new double[] {y}, dot));
  }

  /** A straight line between two points. */
  Plot straight(double fromX, double fromY, double toX, double toY, Ink.Pen pen) {
    return line(new double[] {fromX, toX}, new double[] {fromY, toY}, pen);
  }

  /** A straight line from side to side. */
  Plot rule(double y, Ink.Pen pen) {
    return straight(across.from(), y, across.to(), y, pen);
  }

  /** Words at a point. */
  Plot note(String words, double x, double y, Lie lie, Ink.Type how) {
    notes.add(new Note(words, x, y, lie, how));
    return this;
  }

  /** Writes names beside points where they cover nothing; an empty name is not written. */
  Plot names(Dots dots, List<String> some) {
    named = dots;
    names.addAll(some);
    return this;
  }

  Axis up() {
    return up;
  }

  /** How much room it takes below its frame before another may follow, px. */
  int below() {
    return across.ticks().isEmpty() ? 30 : 42;
  }

  private double x(double value, Rectangle box) {
    return box.x + box.width * across.share(value);
  }

  private double y(double value, Rectangle box) {
    return box.y + box.height * (1 - up.share(value));
  }

  void paint(Drawing d, Rectangle box) {
    double bottom = box.getMaxY();
    double right = box.getMaxX();
    across.lines().forEach(v -> d.line(x(v, box), box.y, x(v, box), bottom, Ink.GRID));
    up.lines().forEach(v -> d.line(box.x, y(v, box), right, y(v, box), Ink.GRID));
    new LayerPainter(across, up, box).paint(d, layers);
    paintNotes(d, box);
    paintNames(d, box);
    d.draw(box, Ink.FRAME);
    if (up.from() < 0 && up.to() > 0) {
      d.line(box.x, y(0, box), right, y(0, box), Ink.FRAME);
    }
    paintTicks(d, box);
  }

  private void paintNotes(Drawing d, Rectangle box) {
    for (Note n : notes) {
      double aside = n.lie == Lie.START ? 5 : n.lie == Lie.END ? -5 : 0;
      d.text(n.words, x(n.across, box) + aside, y(n.up, box) + 4, n.lie, n.type);
    }
  }

  private void paintNames(Drawing d, Rectangle box) {
    DotLabels labels = new DotLabels(box);
    for (int k = 0; k < names.size(); k++) {
      labels.keepClear(x(named.across[k], box), y(named.up[k], box));
    }
    for (int k = 0; k < names.size(); k++) {
      if (!names.get(k).isEmpty()) {
        labels.write(d, names.get(k), x(named.across[k], box), y(named.up[k], box));
      }
    }
  }

  private void paintTicks(Drawing d, Rectangle box) {
    Ink.Type type = small ? Ink.SMALL : Ink.NOTE;
    for (Axis.Tick t : across.ticks()) {
      d.text(t.label(), x(t.value(), box), box.getMaxY() + (small ? 12 : 15), Lie.MIDDLE, type);
    }
    for (Axis.Tick t : up.ticks()) {
      d.text(t.label(), box.x - 6, y(t.value(), box) + (small ? 3 : 4), Lie.END, type);
    }
    d.text(up.words(), small ? box.x : Math.max(2, box.x - 54), box.y - 8, Lie.START, Ink.NOTE);
    if (!across.words().isEmpty()) {
      d.text(across.words(), box.getMaxX(), box.getMaxY() + 31, Lie.END, type);
    }
  }

  /** The key in a row that ends at a point. */
  void paintKeyBefore(Drawing d, double x, double y) {
    double at = x;
    for (int k = keys.size() - 1; k >= 0; k--) {
      // Words begin at their sample, whatever type the reader has; the width only keeps the room.
      at -= Ink.NOTE.width(keys.get(k).words) + 28;
      paintKey(d, keys.get(k), at, y);
      at -= 14;
    }
  }

  /** The key in a column below a point. */
  void paintKeyBelow(Drawing d, double x, double y, double step) {
    for (int k = 0; k < keys.size(); k++) {
      paintKey(d, keys.get(k), x, y + k * step);
    }
  }

  int explainedLayers() {
    return keys.size();
  }

  private static void paintKey(Drawing d, Key key, double x, double y) {
    if (key.sample instanceof Area area) {
      d.fill(new Rectangle2D.Double(x, y - 9, 22, 10), area.colour);
    } else if (key.sample instanceof Line line) {
      d.line(x, y - 4, x + 22, y - 4, line.pen);
    } else if (key.sample instanceof Dots dots) {
      d.fill(dots.dot.at(x + 11, y - 4), dots.dot.fill);
      d.draw(dots.dot.at(x + 11, y - 4), Ink.LINE);
    }
    d.text(key.words, x + 28, y, Lie.START, Ink.NOTE);
  }
}
