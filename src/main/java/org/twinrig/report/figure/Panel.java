package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;

/**
 * A graph of levels over frequency: paper, frequency axis with the usual ticks, curves, interval
 * bands and the mark strip. Built up by {@code with…} calls in drawing order, painted once per
 * medium.
 */
@SuppressWarnings("ArrayRecordComponent")
final class Panel {
  static final int WIDTH = 780;
  private static final int LEFT = 62;
  private static final int RIGHT = 18;
  private static final int TOP = 62;
  private static final int BOTTOM = 84;
  private static final double PIXELS_PER_DECADE = (WIDTH - LEFT - RIGHT) / 3.0;
  private static final double TALLEST_AT_10_DB = 12;
  private static final double VARIANCE_HEIGHT = 270;
  private static final double[] TICKS_HZ = {
    20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000
  };

  private final Texts texts;
  private final Range range;
  private final List<Curve> curves = new ArrayList<>();
  private final List<Area> areas = new ArrayList<>();
  private final List<Rule> rules = new ArrayList<>();
  private final List<Label> labels = new ArrayList<>();
  private final List<Leader> leaders = new ArrayList<>();
  private final List<Bar> bars = new ArrayList<>();
  private final List<Key> keys = new ArrayList<>();
  private Optional<MarkStrip> strip = Optional.empty();
  private boolean ofLevels = true;

  Panel(Texts texts, Range range) {
    this.texts = texts;
    this.range = range;
  }

  /** What is written around the graph. */
  record Texts(String title, String subtitle, String levelAxis, String fingerprint) {}

  /** The level axis: from, to and tick step in dB, and how many dB are as long as one decade. */
  record Range(double fromDb, double toDb, double stepDb, double dbPerDecade) {
    /** A range that holds all levels, in whole steps. */
    static Range holding(double lowest, double highest, double stepDb, double dbPerDecade) {
      double from = Math.floor(lowest / stepDb) * stepDb;
      double to = Math.ceil(highest / stepDb) * stepDb;
      return new Range(from, Math.max(to, from + stepDb), stepDb, dbPerDecade);
    }

    /** For differences: 10 dB a decade while that fits a page, otherwise 25 dB (IEC 60263). */
    static Range ofDifferences(double lowest, double highest) {
      boolean tall = highest - lowest > TALLEST_AT_10_DB;
      return holding(lowest, highest, 5, tall ? 25 : 10);
    }

    /** For variances in dB² from 0: four to seven round steps on a fixed height. */
    static Range ofVariances(double highest) {
      double power = Math.pow(10, Math.floor(Math.log10(highest / 7)));
      double rough = highest / 7 / power;
      double step = power * (rough <= 1 ? 1 : rough <= 2 ? 2 : rough <= 5 ? 5 : 10);
      return onHeight(0, highest, step, VARIANCE_HEIGHT);
    }

    /** For what is no level: whole steps that hold both ends, on a height in px. */
    static Range onHeight(double lowest, double highest, double step, double height) {
      double from = Math.floor(lowest / step + 1e-9) * step;
      double to = Math.ceil(highest / step - 1e-9) * step;
      return new Range(from, to, step, (to - from) * PIXELS_PER_DECADE / height);
    }

    private String tick(double db) {
      int decimals = (int) Math.max(0, Math.ceil(-Math.log10(stepDb) - 1e-9));
      return Numbers.fixed(db, decimals);
    }
  }

  /** A filled band between two levels; a break where the lower is NaN. */
  record Area(double[] hz, double[] lowDb, double[] highDb, Color colour) {}

  /** A curve through points; a break where {@code db} is NaN. */
  record Curve(double[] hz, double[] db, Color colour, Stroke stroke) {}

  /** Words on the graph itself, their middle at a point. */
  record Label(double hz, double db, String words, Color colour) {}

  /** Words beside the thing they name, with a line that leads to it. */
  record Leader(double hz, double db, String words, double toHz, double toDb) {}

  /** A straight line between two points, drawn over the curves. */
  record Bar(double fromHz, double fromDb, double toHz, double toDb) {}

  private record Rule(double db, String label, Stroke stroke) {}

  private record Key(String word, Color colour, Stroke stroke, boolean area) {}

  Panel withArea(double[] hz, double[] lowDb, double[] highDb, String word) {
    return withArea(new Area(hz, lowDb, highDb, Ink.BAND), word);
  }

  Panel withArea(Area area, String word) {
    areas.add(area);
    keys.add(new Key(word, area.colour, Ink.THIN, true));
    return this;
  }

  Panel withLabel(Label label) {
    labels.add(label);
    return this;
  }

  Panel withLeader(Leader leader) {
    leaders.add(leader);
    return this;
  }

  Panel withBar(Bar bar) {
    bars.add(bar);
    return this;
  }

  /** The ordinate holds no levels: no proportion of decibels to decades applies. */
  Panel withoutScale() {
    ofLevels = false;
    return this;
  }

  Panel withCurve(Curve curve) {
    curves.add(curve);
    return this;
  }

  Panel withCurve(Curve curve, String word) {
    keys.add(new Key(word, curve.colour, curve.stroke, false));
    return withCurve(curve);
  }

  Panel withRule(double db, String label) {
    rules.add(new Rule(db, label, Ink.DOTTED));
    return this;
  }

  Panel withStrip(List<MarkStrip.Cell> cells) {
    strip = Optional.of(MarkStrip.of(cells));
    return this;
  }

  int height() {
    double plot = (range.toDb - range.fromDb) / range.dbPerDecade * PIXELS_PER_DECADE;
    return (int) Math.round(plot) + TOP + BOTTOM;
  }

  private double x(double hz) {
    return LEFT + Math.log10(hz / 20) * PIXELS_PER_DECADE;
  }

  private double y(double db) {
    double plot = height() - TOP - BOTTOM;
    return TOP + (range.toDb - db) / (range.toDb - range.fromDb) * plot;
  }

  void paint(Graphics2D g) {
    g.setColor(Ink.PAPER);
    g.fill(new Rectangle2D.Double(0, 0, WIDTH, height()));
    paintGrid(g);
    areas.forEach(a -> paintArea(g, a));
    CurveLayer.paint(
        g, curves, range, new Rectangle(LEFT, TOP, WIDTH - LEFT - RIGHT, height() - TOP - BOTTOM));
    paintRules(g);
    paintBars(g);
    paintLabels(g);
    paintFrame(g);
    paintTexts(g);
  }

  private void paintGrid(Graphics2D g) {
    g.setStroke(Ink.HAIR);
    g.setColor(Ink.GRID);
    for (double decade = 10; decade <= 10_000; decade *= 10) {
      for (int k = 1; k <= 9; k++) {
        double hz = k * decade;
        if (hz >= 20 && hz <= 20_000) {
          g.draw(new Line2D.Double(x(hz), TOP, x(hz), y(range.fromDb)));
        }
      }
    }
    for (double db = range.fromDb; db <= range.toDb + 1e-9; db += range.stepDb) {
      g.draw(new Line2D.Double(LEFT, y(db), x(20_000), y(db)));
    }
  }

  private void paintArea(Graphics2D g, Area area) {
    int k = 0;
    while (k < area.hz.length) {
      if (Double.isNaN(area.lowDb[k])) {
        k++;
        continue;
      }
      int end = k;
      while (end < area.hz.length && !Double.isNaN(area.lowDb[end])) {
        end++;
      }
      Path2D.Double path = new Path2D.Double();
      for (int p = k; p < end; p++) {
        line(path, p == k, x(area.hz[p]), y(clamp(area.highDb[p])));
      }
      for (int p = end - 1; p >= k; p--) {
        line(path, false, x(area.hz[p]), y(clamp(area.lowDb[p])));
      }
      path.closePath();
      g.setColor(area.colour);
      g.fill(path);
      k = end;
    }
  }

  private double clamp(double db) {
    return Math.max(range.fromDb, Math.min(range.toDb, db));
  }

  private static void line(Path2D.Double path, boolean first, double x, double y) {
    if (first) {
      path.moveTo(x, y);
    } else {
      path.lineTo(x, y);
    }
  }

  private void paintRules(Graphics2D g) {
    for (Rule rule : rules) {
      g.setColor(Ink.TEXT);
      g.setStroke(rule.stroke);
      g.draw(new Line2D.Double(LEFT, y(rule.db), x(20_000), y(rule.db)));
      g.setFont(Ink.SMALL);
      Words.after(g, rule.label, LEFT + 5, y(rule.db) - 3);
    }
  }

  private void paintBars(Graphics2D g) {
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.THIN);
    for (Bar bar : bars) {
      g.draw(new Line2D.Double(x(bar.fromHz), y(bar.fromDb), x(bar.toHz), y(bar.toDb)));
    }
  }

  private void paintLabels(Graphics2D g) {
    g.setFont(Ink.NOTE);
    for (Label label : labels) {
      g.setColor(label.colour);
      Words.around(g, label.words, x(label.hz), y(label.db) + 4);
    }
    g.setStroke(Ink.HAIR);
    g.setColor(Ink.TEXT);
    for (Leader leader : leaders) {
      double x = x(leader.hz);
      double y = y(leader.db);
      boolean rightwards = leader.toHz > leader.hz;
      if (rightwards) {
        Words.before(g, leader.words, x - 5, y + 4);
      } else {
        Words.after(g, leader.words, x + 5, y + 4);
      }
      g.draw(new Line2D.Double(x, y, x(leader.toHz), y(leader.toDb)));
      g.fill(new Ellipse2D.Double(x(leader.toHz) - 2, y(leader.toDb) - 2, 4, 4));
    }
  }

  private void paintFrame(Graphics2D g) {
    g.setStroke(Ink.THIN);
    g.setColor(Ink.AXIS);
    g.draw(new Rectangle2D.Double(LEFT, TOP, x(20_000) - LEFT, y(range.fromDb) - TOP));
    if (range.fromDb < 0 && range.toDb > 0) {
      g.draw(new Line2D.Double(LEFT, y(0), x(20_000), y(0)));
    }
    g.setFont(Ink.TICK);
    g.setColor(Ink.TEXT);
    for (double hz : TICKS_HZ) {
      String label = hz < 1000 ? Long.toString((long) hz) : (long) (hz / 1000) + "k";
      Words.around(g, label, x(hz), y(range.fromDb) + 15);
    }
    for (double db = range.fromDb; db <= range.toDb + 1e-9; db += range.stepDb) {
      Words.before(g, range.tick(db), LEFT - 7, y(db) + 4);
    }
  }

  private void paintTexts(Graphics2D g) {
    double below = y(range.fromDb);
    g.setColor(Ink.TEXT);
    g.setFont(Ink.TITLE);
    Words.after(g, texts.title, LEFT, 22);
    g.setFont(Ink.NOTE);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(g, texts.subtitle, LEFT, 38);
    paintKeys(g);
    g.setFont(Ink.NOTE);
    g.setColor(Ink.TEXT);
    Words.after(g, texts.levelAxis, 8, 54);
    Words.before(g, "Frequency, Hz", x(20_000), below + 31);
    strip.ifPresent(
        s -> {
          s.paint(g, hz -> Math.max(LEFT, Math.min(x(20_000), x(hz))), below + 40);
          MarkStrip.legend(g, LEFT, below + 67);
        });
    g.setFont(Ink.SMALL);
    g.setColor(Ink.FAINT_TEXT);
    String scale = ofLevels ? "1 decade = " + Math.round(range.dbPerDecade) + " dB" : "";
    String study = texts.fingerprint.isEmpty() ? "" : "study " + texts.fingerprint;
    String small = scale.isEmpty() || study.isEmpty() ? scale + study : scale + " · " + study;
    Words.before(g, small, x(20_000), below + 67);
  }

  private void paintKeys(Graphics2D g) {
    g.setFont(Ink.NOTE);
    double at = x(20_000);
    for (int k = keys.size() - 1; k >= 0; k--) {
      Key key = keys.get(k);
      // Words begin at their swatch, whatever type the reader has; the width only keeps the room.
      at -= g.getFontMetrics().stringWidth(key.word);
      g.setColor(Ink.TEXT);
      Words.after(g, key.word, at, 54);
      at -= 28;
      g.setColor(key.colour);
      g.setStroke(key.stroke);
      if (key.area) {
        g.fill(new Rectangle2D.Double(at, 45, 22, 10));
      } else {
        g.draw(new Line2D.Double(at, 50, at + 22, 50));
      }
      at -= 14;
    }
  }
}
