package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
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
        Plot.of(percent("Stated, %"), percent("Reached, %"))
            .with(
                new Plot.Line(new double[] {0, 100}, new double[] {0, 100}, Ink.FRAME),
                "as stated");
    bars(plot, leftOut, 0);
    bars(plot, heldOut, BESIDE);
    plot.with(dots(leftOut, 0, Plot.Dot.FULL), "units left out in turn");
    if (!heldOut.isEmpty()) {
      plot.with(
          dots(heldOut, BESIDE, Plot.Dot.OPEN),
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
        List.of(
            new Axis.Tick(0, "0"),
            new Axis.Tick(20, "20"),
            new Axis.Tick(50, "50"),
            new Axis.Tick(80, "80"),
            new Axis.Tick(90, "90"),
            new Axis.Tick(95, ""),
            new Axis.Tick(100, "100"));
    return Axis.linear(words, 0, 100, ticks);
  }

  private static double[] stated(List<Coverage> rows, double aside) {
    return Values.of(rows, c -> 100 * c.stated() - aside);
  }

  private static Plot.Dots dots(List<Coverage> rows, double aside, Plot.Dot look) {
    return new Plot.Dots(stated(rows, aside), Values.of(rows, c -> 100 * c.reached()), look);
  }

  private static void bars(Plot plot, List<Coverage> rows, double aside) {
    List<Coverage> some = rows.stream().filter(c -> c.units() >= FEWEST_FOR_BARS).toList();
    for (Coverage c : some) {
      double x = 100 * c.stated() - aside;
      plot.straight(x, 100 * c.low(), x, 100 * c.high(), Ink.LINE);
    }
    if (!some.isEmpty()) {
      double[] x = stated(some, aside);
      plot.with(new Plot.Dots(x, Values.of(some, c -> 100 * c.low()), Plot.Dot.CAP))
          .with(new Plot.Dots(x, Values.of(some, c -> 100 * c.high()), Plot.Dot.CAP));
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
