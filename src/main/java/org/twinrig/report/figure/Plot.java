package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.knowm.xchart.style.markers.Marker;
import org.twinrig.report.figure.Drawing.Lie;
import org.twinrig.response.Anchor;

/**
 * Two axes and what is drawn between them, in drawing order, at any place of any size. The plotting
 * library draws the layers, see {@link LayerPainter}.
 */
@SuppressWarnings("ArrayRecordComponent") // a drawing holds hundreds of points and is drawn once
final class Plot {
  static final int MARKER_SIZE = 7;

  /** Bands per octave so fine that their edges are those of an anchor as stated. */
  private static final int FINE = 48;

  private final Axis across;
  private final Axis up;
  private final boolean small;
  private final List<Layer> layers = new ArrayList<>();
  private final List<Key> keys = new ArrayList<>();
  private final List<BiConsumer<Drawing, Rectangle>> notes = new ArrayList<>();
  private final List<Name> names = new ArrayList<>();

  /** An empty plot; a small one, among others, has small type at its ticks. */
  Plot(Axis across, Axis up, boolean small) {
    this.across = across;
    this.up = up;
    this.small = small;
  }

  static Plot overFrequency(Axis up) {
    return new Plot(Axis.frequency(), up, false);
  }

  /** What is drawn at places along both axes; NaN is a break. */
  sealed interface Layer {
    double[] across();
  }

  record Line(double[] across, double[] up, Ink.Pen pen) implements Layer {}

  /** A filled band between two curves. */
  record Area(double[] across, double[] low, double[] high, Color colour) implements Layer {}

  /** Points of one shape; shapes keep apart without colour. */
  record Dots(double[] across, double[] up, Marker shape, Color colour) implements Layer {}

  private record Key(String words, Layer sample) {}

  private record Name(String words, double across, double up) {}

  Plot with(Layer layer) {
    layers.add(layer);
    return this;
  }

  /** Adds a layer that the key explains, if there are words for it. */
  Plot with(Layer layer, String words) {
    if (!words.isEmpty()) {
      keys.add(new Key(words, layer));
    }
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

  Plot straight(double fromX, double fromY, double toX, double toY, Ink.Pen pen) {
    return line(new double[] {fromX, toX}, new double[] {fromY, toY}, pen);
  }

  /** A straight line from side to side. */
  Plot rule(double y, Ink.Pen pen) {
    return straight(across.from(), y, across.to(), y, pen);
  }

  /** Words at a point. */
  Plot note(String words, double x, double y, Lie lie, Ink.Type type) {
    double aside = lie == Lie.END ? -5 : 0;
    notes.add((d, box) -> d.text(words, x(x, box) + aside, y(y, box) + 4, lie, type));
    return this;
  }

  /** A bracket at the lower edge over the stretch that levels are lined up by, if there is one. */
  Plot linedUp(Anchor anchor) {
    double[] ends = anchor.stretch(FINE);
    if (ends[0] > 0) {
      notes.add(
          (d, box) -> {
            double left = x(ends[0], box);
            double right = x(ends[1], box);
            double low = box.getMaxY() - 4;
            d.line(left, low, right, low, Ink.HAIRLINE);
            d.line(left, low - 4, left, low, Ink.HAIRLINE);
            d.line(right, low - 4, right, low, Ink.HAIRLINE);
            d.text("lined up here", (left + right) / 2, low - 6, Lie.MIDDLE, Ink.SMALL);
          });
    }
    return this;
  }

  /** A point's name, which is put where it covers nothing; an empty name only keeps its point. */
  Plot name(String words, double x, double y) {
    names.add(new Name(words, x, y));
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
    notes.forEach(note -> note.accept(d, box));
    DotLabels labels = new DotLabels(box);
    names.forEach(n -> labels.keepClear(x(n.across, box), y(n.up, box)));
    names.stream()
        .filter(n -> !n.words.isEmpty())
        .forEach(n -> labels.write(d, n.words, x(n.across, box), y(n.up, box)));
    d.draw(box, Ink.FRAME);
    if (up.from() < 0 && up.to() > 0) {
      d.line(box.x, y(0, box), right, y(0, box), Ink.FRAME);
    }
    paintTicks(d, box);
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
    d.text(across.words(), box.getMaxX(), box.getMaxY() + 31, Lie.END, Ink.NOTE);
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

  /** The key in a column from a point down; returns where it ends. */
  int paintKeyBelow(Drawing d, int x, int y, int step) {
    for (int k = 0; k < keys.size(); k++) {
      paintKey(d, keys.get(k), x, y + k * step);
    }
    return y + keys.size() * step;
  }

  private static void paintKey(Drawing d, Key key, double x, double y) {
    if (key.sample instanceof Area area) {
      d.fill(new Rectangle((int) x, (int) y - 9, 22, 10), area.colour);
    } else if (key.sample instanceof Line line) {
      d.line(x, y - 4, x + 22, y - 4, line.pen);
    } else if (key.sample instanceof Dots dots) {
      d.painted(
          g -> {
            g.setColor(dots.colour);
            dots.shape.paint(g, 11, -4, MARKER_SIZE);
          },
          (int) x,
          (int) y,
          false);
    }
    d.text(key.words, x + 28, y, Lie.START, Ink.NOTE);
  }
}
