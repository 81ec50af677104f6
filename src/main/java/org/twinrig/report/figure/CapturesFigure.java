package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import org.twinrig.response.Levels;

/** All seatings of one unit on both fixtures. */
public final class CapturesFigure {
  private CapturesFigure() {}

  /**
   * One capture.
   *
   * @param onNewFixture on the new fixture, or on the old one
   * @param levels its levels relative to the anchor
   * @param excluded whether it was left out
   */
  public record Trace(boolean onNewFixture, Levels levels, boolean excluded) {}

  /**
   * Names of the fixtures.
   *
   * @param from the old one
   * @param to the new one
   */
  public record Fixtures(String from, String to) {}

  /**
   * Draws one unit.
   *
   * @param unit its name
   * @param traces its captures, at least one
   * @param fixtures names of the fixtures
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(String unit, List<Trace> traces, Fixtures fixtures, Caption caption) {
    long excluded = traces.stream().filter(Trace::excluded).count();
    String title =
        unit
            + ": "
            + traces.size()
            + " captures on two fixtures"
            + (excluded == 0 ? "" : ", " + excluded + " left out");
    double lowest = -10;
    double highest = 10;
    for (Trace trace : traces) {
      for (int b = 0; b < trace.levels.grid().size(); b++) {
        if (trace.levels.has(b)) {
          lowest = Math.min(lowest, Math.max(-40, trace.levels.db(b)));
          highest = Math.max(highest, trace.levels.db(b));
        }
      }
    }
    Panel panel =
        new Panel(
            new Panel.Texts(
                title,
                caption.kind() + "; every line is one seating of one side; dotted: left out",
                "Level re anchor, dB",
                caption.fingerprint()),
            Panel.Range.holding(lowest - 1, highest + 1, 10, 25));
    boolean oldNamed = false;
    boolean newNamed = false;
    for (Trace trace : traces) {
      Panel.Curve curve = curve(trace);
      boolean named = trace.onNewFixture ? newNamed : oldNamed;
      if (trace.excluded || named) {
        panel.withCurve(curve);
      } else {
        panel.withCurve(curve, trace.onNewFixture ? fixtures.to : fixtures.from);
        oldNamed |= !trace.onNewFixture;
        newNamed |= trace.onNewFixture;
      }
    }
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("captures", unit),
            title,
            "Levels of every seating against frequency on both fixtures",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  private static Panel.Curve curve(Trace trace) {
    int n = trace.levels.grid().size();
    double[] hz = new double[n];
    double[] db = new double[n];
    Arrays.setAll(hz, b -> trace.levels.grid().band(b).midHz());
    Arrays.setAll(db, b -> trace.levels.level(b).orElse(Double.NaN));
    return new Panel.Curve(
        hz,
        db,
        trace.onNewFixture ? Ink.NEW_FIXTURE : Ink.OLD_FIXTURE,
        trace.excluded ? Ink.DOTTED : trace.onNewFixture ? Ink.THIN : Ink.DASHED);
  }
}
