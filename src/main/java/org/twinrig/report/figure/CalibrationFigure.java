package org.twinrig.report.figure;

import java.awt.Color;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.internal.Numbers;

/** How often prediction intervals held against how often they were said to. */
public final class CalibrationFigure {
  /** Held-out units stand this far beside those left out, percent. */
  private static final double BESIDE = 1.6;

  /** With fewer units an interval fills the square and says nothing. */
  private static final int FEWEST_FOR_BARS = 5;

  /** The place of 95 % among the stated confidences: what the title tells. */
  private static final int USUAL = Coverage.STATED.indexOf(0.95);

  private CalibrationFigure() {}

  /** Draws one kind; nothing where no unit could be judged. */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    List<Coverage> leftOut = kind.evidence().leftOut().coverage(Optional.empty());
    List<Coverage> heldOut = kind.evidence().heldOut().coverage(Optional.empty());
    if (leftOut.isEmpty()) {
      return Optional.empty();
    }
    Plot plot =
        new Plot(percent("Stated, %"), percent("Reached, %"), false)
            .with(
                new Plot.Line(new double[] {0, 100}, new double[] {0, 100}, Ink.FRAME),
                "as stated");
    bars(plot, leftOut, 0);
    bars(plot, heldOut, BESIDE);
    plot.with(dots(leftOut, 0, SeriesMarkers.CIRCLE, Ink.NEW_FIXTURE), "units left out in turn");
    if (!heldOut.isEmpty()) {
      plot.with(
          dots(heldOut, BESIDE, SeriesMarkers.DIAMOND, Ink.OLD_FIXTURE),
          Numbers.count(
              heldOut.get(0).units(),
              "unit held out (drawn beside)",
              "units held out (drawn beside)"));
    }
    String howToRead =
        ", all bands; a bar is the %s interval of the share, counted in units"
            .formatted(caption.percent());
    return Optional.of(
        caption
            .sheet(finding(leftOut), howToRead)
            .square(plot, leftOut.stream().map(CalibrationFigure::note).toList())
            .figure(
                caption.name("calibration"),
                "Reached against stated coverage of prediction intervals at 50, 80, 90, 95 and"
                    + " 99 %"));
  }

  private static Axis percent(String words) {
    List<Axis.Tick> ticks =
        Stream.of(0, 20, 50, 80, 90, 95, 100)
            .map(
                p ->
                    new Axis.Tick(p, p == 95 ? "" : p.toString())) // no room between its neighbours
            .toList();
    return Axis.linear(words, 0, 100, ticks);
  }

  private static Plot.Dots dots(List<Coverage> rows, double aside, Marker shape, Color colour) {
    return new Plot.Dots(
        Values.of(rows, c -> 100 * c.stated() - aside),
        Values.of(rows, c -> 100 * c.reached()),
        shape,
        colour);
  }

  private static void bars(Plot plot, List<Coverage> rows, double aside) {
    for (Coverage c : rows) {
      if (c.units() >= FEWEST_FOR_BARS) {
        double x = 100 * c.stated() - aside;
        plot.straight(x, 100 * c.low(), x, 100 * c.high(), Ink.LINE);
      }
    }
  }

  private static String note(Coverage c) {
    return "%s %% stated, %s %% reached (%s to %s)"
        .formatted(
            hundredths(c.stated()),
            hundredths(c.reached()),
            hundredths(c.low()),
            hundredths(c.high()));
  }

  private static String hundredths(double share) {
    return Numbers.fixed(100 * share, 0);
  }

  private static String finding(List<Coverage> rows) {
    boolean within = rows.stream().allMatch(c -> c.low() <= c.stated() && c.stated() <= c.high());
    Coverage usual = rows.get(Math.min(USUAL, rows.size() - 1));
    return "intervals of %s %% held %s %%%s"
        .formatted(
            hundredths(usual.stated()),
            hundredths(usual.reached()),
            within ? "" : "; not all are as stated");
  }
}
