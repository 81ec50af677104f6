package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;

/** The drift chart of the check unit on one fixture: its level, and below it every octave. */
public final class DriftFigure {
  private static final int COLUMNS = 2;

  /** Longer lists of names do not fit into a title beside the fixture. */
  private static final int MOST_LETTERS = 32;

  private static final int LEFT = 62;
  private static final int TOP = 62;
  private static final double LEVEL_HEIGHT = 130;
  private static final double OCTAVE_HEIGHT = 62;
  private static final double ROW_GAP = 30;
  private static final double COLUMN_GAP = 62;
  private static final int BOTTOM = 46;
  private static final double WHOLE = Panel.WIDTH - LEFT - 18.0;

  private DriftFigure() {}

  /**
   * Draws one fixture.
   *
   * @param drift the charts
   * @param unit the check unit
   * @param fingerprint of the study
   * @return the drawing
   */
  public static Figure of(FixtureDrift drift, String unit, String fingerprint) {
    String title = title(drift);
    int rows = (drift.octaves().size() + COLUMNS - 1) / COLUMNS;
    int height = (int) Math.round(TOP + LEVEL_HEIGHT + rows * (OCTAVE_HEIGHT + ROW_GAP)) + BOTTOM;
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("drift", drift.fixture()),
            title,
            "Level and octave levels of the check unit by session, with control limits and moving"
                + " averages",
            Panel.WIDTH,
            height),
        g -> paint(g, drift, new Texts(title, subtitle(drift, unit), fingerprint), height));
  }

  private record Texts(String title, String subtitle, String fingerprint) {}

  /** What the charts say. */
  static String title(FixtureDrift drift) {
    String who = TransferFigure.capital(drift.label()) + ": ";
    if (drift.level().points().isEmpty()) {
      return who + "the check unit was not captured";
    }
    if (drift.level().limits().isEmpty()) {
      return who + "too few sessions for limits";
    }
    List<FixtureDrift.OutOfControl> out = drift.outOfControl();
    if (out.isEmpty()) {
      return who + "no session is out of control";
    }
    String names =
        out.stream().map(FixtureDrift.OutOfControl::session).collect(Collectors.joining(", "));
    String named =
        names.length() <= MOST_LETTERS ? names : Numbers.count(out.size(), "session", "sessions");
    return who + named + (out.size() == 1 ? " is" : " are") + " out of control";
  }

  private static String subtitle(FixtureDrift drift, String unit) {
    int sessions = drift.level().points().size();
    String counted = "check unit " + unit + ", " + Numbers.count(sessions, "session", "sessions");
    return drift.level().limits().isPresent()
        ? counted + "; dotted: centre ± 3σ; pale band: the same for the moving average (line)"
        : counted + "; limits need " + DriftChart.FEWEST_SESSIONS;
  }

  private static void paint(Graphics2D g, FixtureDrift drift, Texts texts, int height) {
    g.setColor(Ink.PAPER);
    g.fill(new Rectangle2D.Double(0, 0, Panel.WIDTH, height));
    g.setColor(Ink.TEXT);
    g.setFont(Ink.TITLE);
    Words.after(g, texts.title, LEFT, 22);
    g.setFont(Ink.NOTE);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(g, texts.subtitle, LEFT, 38);
    new SessionStrip(drift.level(), new Rectangle2D.Double(LEFT, TOP, WHOLE, LEVEL_HEIGHT))
        .paint(g, "Level as calibrated re centre, dB", true);
    double width = (WHOLE - COLUMN_GAP) / COLUMNS;
    double first = TOP + LEVEL_HEIGHT + ROW_GAP + 14;
    for (int k = 0; k < drift.octaves().size(); k++) {
      DriftChart chart = drift.octaves().get(k);
      double left = LEFT + k % COLUMNS * (width + COLUMN_GAP);
      int row = k / COLUMNS;
      double top = first + row * (OCTAVE_HEIGHT + ROW_GAP);
      new SessionStrip(chart, new Rectangle2D.Double(left, top, width, OCTAVE_HEIGHT))
          .paint(g, TransferFigure.capital(chart.words()) + " re level and centre, dB", false);
    }
    g.setFont(Ink.SMALL);
    g.setColor(Ink.FAINT_TEXT);
    Words.after(g, "open ring: outside its limits; sessions from left to right", LEFT, height - 12);
    Words.before(g, "study " + texts.fingerprint, Panel.WIDTH - 18, height - 12);
  }
}
