package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Numbers;

/** Half-width against the number of units, zone by zone, one line per number of seatings. */
public final class PlanFigure {
  private static final int LEFT = 44;
  private static final int RIGHT = 18;
  private static final int TOP = 82;
  private static final int BOTTOM = 52;
  private static final int COLUMNS = 4;
  private static final double GAP = 26;
  private static final double ROW_GAP = 46;
  private static final double HEIGHT = 130;

  /** A zone whose lines lie higher than this many tolerances is cut there. */
  private static final double TALLEST_TOLERANCES = 4;

  private final Plan plan;
  private final List<Integer> seatings;
  private final int unitsMax;
  private final double greatestDb;

  private PlanFigure(Plan plan, List<Integer> seatings, int unitsMax) {
    this.plan = plan;
    this.seatings = seatings;
    this.unitsMax = unitsMax;
    double tolerance = plan.zones().stream().mapToDouble(ZonePlan::toleranceDb).max().orElse(1);
    double greatest =
        plan.zones().stream().mapToDouble(z -> z.halfDb(first(seatings.get(0)))).max().orElse(1);
    this.greatestDb =
        Math.ceil(Math.min(Math.max(greatest, 1.5 * tolerance), TALLEST_TOLERANCES * tolerance));
  }

  /**
   * Draws one kind.
   *
   * @param plan its plan, with a zone at least
   * @param seatings the numbers of seatings, at most four, rising
   * @param unitsMax the most units shown
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(Plan plan, List<Integer> seatings, int unitsMax, Caption caption) {
    PlanFigure figure = new PlanFigure(plan, seatings, unitsMax);
    int rows = (plan.zones().size() + COLUMNS - 1) / COLUMNS;
    int height = (int) Math.round(TOP + rows * HEIGHT + (rows - 1) * ROW_GAP + BOTTOM);
    String title = title(plan);
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("plan", plan.kind()),
            title,
            "Prediction half-width against the number of units for several numbers of seatings, one"
                + " small graph per octave, with the tolerance",
            Panel.WIDTH,
            height),
        g -> figure.paint(g, title, caption, height));
  }

  static String title(Plan plan) {
    long all = plan.zones().size();
    long met = count(plan, ZonePlan.Outlook.MET);
    long never = count(plan, ZonePlan.Outlook.NEVER);
    long hoped = count(plan, ZonePlan.Outlook.PLANNED) + count(plan, ZonePlan.Outlook.EVEN_CHANCE);
    StringBuilder text = new StringBuilder(TransferFigure.capital(plan.kind()));
    text.append(": ").append(met).append(" of ").append(all).append(" octaves meet the tolerance");
    if (hoped > 0) {
      text.append(", ").append(hoped).append(" more can");
    }
    if (never > 0) {
      text.append(", ").append(never).append(hoped > 0 ? " never" : " never can");
    }
    return text.toString();
  }

  private static long count(Plan plan, ZonePlan.Outlook outlook) {
    return plan.zones().stream().filter(z -> z.outlook() == outlook).count();
  }

  private Design first(int m) {
    return new Design(plan.present().units(), m, m);
  }

  private void paint(Graphics2D g, String title, Caption caption, int height) {
    g.setColor(Ink.PAPER);
    g.fill(new Rectangle2D.Double(0, 0, Panel.WIDTH, height));
    g.setColor(Ink.TEXT);
    g.setFont(Ink.TITLE);
    Words.after(g, title, LEFT, 22);
    g.setFont(Ink.NOTE);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(
        g,
        caption.counted()
            + "; expected half-width of the "
            + caption.percent()
            + " prediction interval, dB, against the number of units",
        LEFT,
        38);
    paintKeys(g);
    double width = (Panel.WIDTH - LEFT - RIGHT - (COLUMNS - 1) * GAP) / COLUMNS;
    for (int k = 0; k < plan.zones().size(); k++) {
      double left = LEFT + k % COLUMNS * (width + GAP);
      int row = k / COLUMNS;
      paintZone(
          g,
          plan.zones().get(k),
          new Rectangle2D.Double(left, TOP + row * (HEIGHT + ROW_GAP), width, HEIGHT));
    }
    g.setFont(Ink.SMALL);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(
        g,
        "open ring: the study as it is; dot: cheapest design expected to meet the tolerance; square:"
            + " cheapest nine times in ten",
        LEFT,
        height - 12);
    Words.before(g, "study " + caption.fingerprint(), Panel.WIDTH - RIGHT, height - 12);
  }

  private void paintKeys(Graphics2D g) {
    double at = LEFT;
    g.setFont(Ink.NOTE);
    for (int k = 0; k < seatings.size(); k++) {
      g.setColor(colour(k));
      g.setStroke(stroke(k));
      g.draw(new Line2D.Double(at, 52, at + 22, 52));
      g.setColor(Ink.TEXT);
      String words = seatings.get(k) + " seatings on each";
      Words.after(g, words, at + 28, 56);
      at += 28 + g.getFontMetrics().stringWidth(words) + 18;
    }
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.DOTTED);
    g.draw(new Line2D.Double(at, 52, at + 22, 52));
    Words.after(g, "tolerance", at + 28, 56);
  }

  /** From few seatings, pale and dashed, to many, dark and solid. */
  private Color colour(int k) {
    return k == seatings.size() - 1 ? Ink.NEW_FIXTURE : k == 0 ? Ink.OLD_FIXTURE : Ink.OUTLINE;
  }

  private Stroke stroke(int k) {
    return k == seatings.size() - 1
        ? Ink.CURVE
        : k == 0 ? Ink.DASHED : k == 1 ? Ink.HAIR : Ink.THIN;
  }

  private void paintZone(Graphics2D g, ZonePlan zone, Rectangle2D.Double box) {
    paintAxes(g, zone, box);
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.DOTTED);
    double limit = y(box, zone.toleranceDb());
    g.draw(new Line2D.Double(box.x, limit, box.getMaxX(), limit));
    for (int k = 0; k < seatings.size(); k++) {
      g.setColor(colour(k));
      g.setStroke(stroke(k));
      g.draw(curve(zone, seatings.get(k), box));
    }
    mark(g, box, plan.present().units(), zone.presentHalfDb(), Shape.RING);
    zone.evenChance().ifPresent(d -> mark(g, box, d.units(), zone.halfDb(d), Shape.DOT));
    zone.cautious().ifPresent(d -> mark(g, box, d.units(), zone.halfDb(d), Shape.SQUARE));
    if (zone.outlook() == ZonePlan.Outlook.NEVER) {
      g.setFont(Ink.NOTE);
      g.setColor(Ink.TEXT);
      Words.before(
          g,
          "never below " + Numbers.fixed(zone.neverBelowDb(), 1) + " dB",
          box.getMaxX() - 4,
          y(box, 0) - 6);
    }
  }

  private void paintAxes(Graphics2D g, ZonePlan zone, Rectangle2D.Double box) {
    double step = greatestDb > 4 ? 2 : 1;
    g.setStroke(Ink.HAIR);
    g.setFont(Ink.SMALL);
    for (double db = 0; db <= greatestDb + 1e-9; db += step) {
      g.setColor(Ink.GRID);
      g.draw(new Line2D.Double(box.x, y(box, db), box.getMaxX(), y(box, db)));
      g.setColor(Ink.TEXT);
      Words.before(g, Numbers.fixed(db, 0), box.x - 4, y(box, db) + 3);
    }
    int units = unitsMax <= 30 ? 5 : unitsMax <= 60 ? 10 : 50;
    for (int n = units; n <= unitsMax; n += units) {
      if (n >= plan.present().units()) {
        g.setColor(Ink.GRID);
        g.draw(new Line2D.Double(x(box, n), box.y, x(box, n), box.getMaxY()));
        g.setColor(Ink.TEXT);
        Words.around(g, Integer.toString(n), x(box, n), box.getMaxY() + 12);
      }
    }
    g.setColor(Ink.AXIS);
    g.setStroke(Ink.THIN);
    g.draw(box);
    g.setColor(Ink.TEXT);
    g.setFont(Ink.NOTE);
    Words.after(
        g, Numbers.hertz(zone.fromHz()) + " to " + Numbers.hertz(zone.toHz()), box.x, box.y - 6);
  }

  private Path2D curve(ZonePlan zone, int m, Rectangle2D.Double box) {
    Path2D.Double path = new Path2D.Double();
    boolean open = false;
    for (int n = plan.present().units(); n <= unitsMax; n++) {
      double half = zone.halfDb(new Design(n, m, m));
      if (half <= greatestDb) {
        if (open) {
          path.lineTo(x(box, n), y(box, half));
        } else {
          path.moveTo(x(box, n), y(box, half));
        }
        open = true;
      }
    }
    return path;
  }

  private enum Shape {
    RING,
    DOT,
    SQUARE
  }

  private void mark(Graphics2D g, Rectangle2D.Double box, int units, double half, Shape shape) {
    if (half > greatestDb) {
      return;
    }
    double x = x(box, units);
    double y = y(box, half);
    g.setColor(Ink.TEXT);
    g.setStroke(Ink.THIN);
    switch (shape) {
      case RING -> g.draw(new Ellipse2D.Double(x - 3.5, y - 3.5, 7, 7));
      case DOT -> g.fill(new Ellipse2D.Double(x - 3.5, y - 3.5, 7, 7));
      case SQUARE -> g.fill(new Rectangle2D.Double(x - 3.5, y - 3.5, 7, 7));
    }
  }

  private double x(Rectangle2D.Double box, int units) {
    int from = plan.present().units() - 1;
    return box.x + box.width * (units - from) / Math.max(1.0, unitsMax + 1.0 - from);
  }

  private double y(Rectangle2D.Double box, double db) {
    return box.getMaxY() - box.height * db / greatestDb;
  }
}
