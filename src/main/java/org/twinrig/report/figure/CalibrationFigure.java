package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.internal.Numbers;

/** How often prediction intervals held against how often they were said to. */
public final class CalibrationFigure {
  private static final List<CrossPlot.Tick> TICKS =
      List.of(
          new CrossPlot.Tick(0, "0"),
          new CrossPlot.Tick(20, "20"),
          new CrossPlot.Tick(50, "50"),
          new CrossPlot.Tick(80, "80"),
          new CrossPlot.Tick(90, "90"),
          new CrossPlot.Tick(95, ""),
          new CrossPlot.Tick(100, "100"));

  /** Held-out units stand this far beside those left out, percent. */
  private static final double BESIDE = 1.6;

  /** With fewer units an interval fills the square and says nothing. */
  private static final int FEWEST_FOR_BARS = 5;

  /** The place of 95 % among the stated confidences: what the title tells. */
  private static final int USUAL = Coverage.STATED.indexOf(0.95);

  private CalibrationFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing; nothing where no unit could be judged
   */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    List<Coverage> leftOut = kind.evidence().leftOut().coverage(Optional.empty());
    List<Coverage> heldOut = kind.evidence().heldOut().coverage(Optional.empty());
    if (leftOut.isEmpty()) {
      return Optional.empty();
    }
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(leftOut);
    double[] ends = {0, 100};
    CrossPlot plot =
        new CrossPlot(
                new CrossPlot.Texts(
                    title,
                    caption.counted()
                        + ", all bands; a bar is the "
                        + caption.percent()
                        + " interval of the share, counted in units",
                    "Stated, %",
                    "Reached, %",
                    caption.fingerprint()),
                new CrossPlot.Axis(0, 100, false, TICKS))
            .withLine(new CrossPlot.Line(ends, ends, Ink.AXIS, Ink.THIN), "as stated")
            .withDots(dots(leftOut, 0, CrossPlot.Look.FULL), "units left out in turn")
            .withDots(
                dots(heldOut, BESIDE, CrossPlot.Look.OPEN),
                heldOut.isEmpty()
                    ? ""
                    : Numbers.count(
                        heldOut.get(0).units(),
                        "unit held out (drawn beside)",
                        "units held out (drawn beside)"));
    for (Coverage c : leftOut) {
      plot.withNote(note(c));
    }
    return Optional.of(
        Medium.draw(
            new Medium.Sheet(
                Figure.nameOf("calibration", kind.kind()),
                title,
                "Reached against stated coverage of prediction intervals at 50, 80, 90, 95 and 99 %",
                CrossPlot.WIDTH,
                CrossPlot.HEIGHT),
            plot::paint));
  }

  private static List<CrossPlot.Dot> dots(
      List<Coverage> rows, double asidePercent, CrossPlot.Look look) {
    List<CrossPlot.Dot> dots = new ArrayList<>();
    for (Coverage c : rows) {
      boolean bar = c.units() >= FEWEST_FOR_BARS;
      dots.add(
          new CrossPlot.Dot(
              100 * c.stated() - asidePercent,
              100 * c.reached(),
              100 * (bar ? c.low() : c.reached()),
              100 * (bar ? c.high() : c.reached()),
              look,
              ""));
    }
    return dots;
  }

  private static String note(Coverage c) {
    return Numbers.fixed(100 * c.stated(), 0)
        + " % stated, "
        + Numbers.fixed(100 * c.reached(), 0)
        + " % reached ("
        + Numbers.fixed(100 * c.low(), 0)
        + " to "
        + Numbers.fixed(100 * c.high(), 0)
        + ")";
  }

  private static String finding(List<Coverage> rows) {
    long within =
        rows.stream().filter(c -> c.low() <= c.stated() && c.stated() <= c.high()).count();
    Coverage usual = rows.get(Math.min(USUAL, rows.size() - 1));
    String reached =
        "intervals of "
            + Numbers.fixed(100 * usual.stated(), 0)
            + " % held "
            + Numbers.fixed(100 * usual.reached(), 0)
            + " %";
    return within == rows.size() ? reached : reached + "; not all are as stated";
  }
}
