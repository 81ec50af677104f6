package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Stream;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;

/** One control chart in its rectangle: a point per session, limits and the moving average. */
final class SessionStrip {
  private static final double[] STEPS_DB = {
    0.02, 0.03, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, 1, 1.5, 2, 3, 5, 10, 20, 50
  };
  private static final double RADIUS = 2.6;
  private static final double RING = 5;

  /** A wide letter of a session's name with its share of a gap; what the words measure differs. */
  private static final double LETTER_WIDTH = 5.75;

  private final DriftChart chart;
  private final Rectangle2D.Double box;
  private final double centreDb;
  private final double stepDb;

  SessionStrip(DriftChart chart, Rectangle2D.Double box) {
    this.chart = chart;
    this.box = box;
    List<DriftChart.Point> points = chart.points();
    this.centreDb =
        chart
            .limits()
            .map(ControlLimits::centreDb)
            .orElse(points.stream().mapToDouble(DriftChart.Point::valueDb).average().orElse(0));
    double reach =
        Stream.concat(
                points.stream().map(p -> Math.abs(p.valueDb() - centreDb)),
                chart.limits().map(ControlLimits::halfWidthDb).stream())
            .mapToDouble(v -> v)
            .max()
            .orElse(1);
    double step = STEPS_DB[STEPS_DB.length - 1];
    for (int k = STEPS_DB.length - 1; k >= 0; k--) {
      step = 1.08 * reach <= STEPS_DB[k] ? STEPS_DB[k] : step;
    }
    this.stepDb = step;
  }

  private double x(int session) {
    return box.x + (session + 0.5) / chart.points().size() * box.width;
  }

  private double y(double db) {
    return box.y + box.height / 2 - (db - centreDb) / stepDb * box.height / 2;
  }

  void paint(Graphics2D g, String words, boolean named) {
    g.setFont(Ink.NOTE);
    g.setColor(Ink.TEXT);
    Words.after(g, words, box.x, box.y - 6);
    chart.limits().ifPresent(l -> paintLimits(g, l));
    paintFrame(g);
    paintPoints(g);
    if (named) {
      paintNames(g);
    }
  }

  private void paintFrame(Graphics2D g) {
    g.setStroke(Ink.HAIR);
    g.setColor(Ink.AXIS);
    g.draw(new Line2D.Double(box.x, y(centreDb), box.x + box.width, y(centreDb)));
    g.setStroke(Ink.THIN);
    g.draw(box);
    g.setFont(Ink.SMALL);
    g.setColor(Ink.TEXT);
    for (int k = -1; k <= 1; k++) {
      double db = k * stepDb;
      String tick = (k > 0 ? "+" : "") + Numbers.fixed(db, stepDb < 0.2 ? 2 : stepDb < 2 ? 1 : 0);
      Words.before(g, tick, box.x - 5, y(centreDb + db) + 3);
    }
  }

  private void paintLimits(Graphics2D g, ControlLimits limits) {
    Path2D.Double band = new Path2D.Double();
    Path2D.Double average = new Path2D.Double();
    int n = chart.points().size();
    for (int i = 0; i < n; i++) {
      DriftChart.Average at = chart.points().get(i).ewma().orElseThrow();
      go(band, i == 0, x(i), y(centreDb + at.halfWidthDb()));
      go(average, i == 0, x(i), y(at.valueDb()));
    }
    for (int i = n - 1; i >= 0; i--) {
      double half = chart.points().get(i).ewma().orElseThrow().halfWidthDb();
      band.lineTo(x(i), y(centreDb - half));
    }
    band.closePath();
    g.setColor(Ink.BAND);
    g.fill(band);
    g.setColor(Ink.OUTLINE);
    g.setStroke(Ink.THIN);
    g.draw(average);
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.DOTTED);
    for (double db : new double[] {limits.lowerDb(), limits.upperDb()}) {
      g.draw(new Line2D.Double(box.x, y(db), box.x + box.width, y(db)));
    }
  }

  private static void go(Path2D.Double path, boolean first, double x, double y) {
    if (first) {
      path.moveTo(x, y);
    } else {
      path.lineTo(x, y);
    }
  }

  /** The names of all sessions where there is room, else of those outside that do not collide. */
  private void paintNames(Graphics2D g) {
    g.setFont(Ink.SMALL);
    g.setColor(Ink.TEXT);
    List<DriftChart.Point> points = chart.points();
    double widest = points.stream().mapToDouble(p -> width(p.session())).max().orElse(0);
    boolean all = widest <= box.width / Math.max(1, points.size());
    double free = 0;
    for (int i = 0; i < points.size(); i++) {
      String name = points.get(i).session();
      double left = x(i) - width(name) / 2;
      if (all || (points.get(i).outside() && left >= free)) {
        Words.around(g, name, x(i), box.y + box.height + 12);
        free = left + width(name);
      }
    }
  }

  private static double width(String name) {
    return name.length() * LETTER_WIDTH;
  }

  private void paintPoints(Graphics2D g) {
    for (int i = 0; i < chart.points().size(); i++) {
      DriftChart.Point point = chart.points().get(i);
      double x = x(i);
      double y = y(point.valueDb());
      g.setColor(Ink.TEXT);
      g.fill(new Ellipse2D.Double(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS));
      if (point.outside()) {
        g.setStroke(Ink.THIN);
        g.draw(new Ellipse2D.Double(x - RING, y - RING, 2 * RING, 2 * RING));
      }
    }
  }
}
