package org.twinrig.report.figure;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;

/** The mean transfer of a kind with its intervals and marks. */
public final class TransferFigure {
  private TransferFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(KindOutcome kind, Caption caption) {
    List<MarkedBand> bands = kind.transfer().bands();
    Series s = new Series(bands);
    Panel.Range range = Panel.Range.ofDifferences(s.lowest - 0.5, s.highest + 0.5);
    boolean cut = s.cutTo(range);
    String title = title(kind);
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted()
                        + "; the "
                        + caption.percent()
                        + " intervals hold for the mean of the kind, not for a single unit"
                        + (cut ? "; thin lines leave the axis" : ""),
                    "New minus old, dB",
                    caption.fingerprint()),
                range)
            .withArea(s.hz, s.low, s.high, "per band")
            .withCurve(new Panel.Curve(s.hz, s.simLow, Ink.OUTLINE, Ink.THIN), "all bands at once")
            .withCurve(new Panel.Curve(s.hz, s.simHigh, Ink.OUTLINE, Ink.THIN))
            .withCurve(new Panel.Curve(s.hz, s.mean, Ink.TEXT, Ink.CURVE), "mean transfer")
            .withStrip(cells(bands));
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("transfer", kind.kind()),
            title,
            "Mean difference between the fixtures against frequency, with intervals and marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  static String title(KindOutcome kind) {
    long zones =
        kind.zones().stream().filter(z -> z.mark() == Mark.UNRELIABLE && !z.empty()).count();
    double reliable = kind.transfer().octaves(Mark.RELIABLE);
    if (reliable == 0) {
      return capital(kind.kind()) + ": no band translates reliably";
    }
    return capital(kind.kind())
        + ": "
        + Numbers.fixed(reliable, 1)
        + " octaves translate reliably, "
        + (zones == 0
            ? "none is lost"
            : Numbers.count(zones, "zone cannot be translated", "zones cannot be translated"));
  }

  static String capital(String text) {
    return text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
  }

  static List<MarkStrip.Cell> cells(List<MarkedBand> bands) {
    return bands.stream().map(b -> new MarkStrip.Cell(b.band(), b.mark(), b.empty())).toList();
  }

  /** The estimates as curves, NaN where there is none: that is a break in the line. */
  private static final class Series {
    /** An interval wider than this would squeeze everything else: the axis does not follow it. */
    private static final double WIDEST_DB = 12;

    final double[] hz;
    final double[] mean;
    final double[] low;
    final double[] high;
    final double[] simLow;
    final double[] simHigh;
    double lowest = -2;
    double highest = 2;

    Series(List<MarkedBand> bands) {
      int n = bands.size();
      hz = new double[n];
      mean = new double[n];
      low = new double[n];
      high = new double[n];
      simLow = new double[n];
      simHigh = new double[n];
      for (int b = 0; b < n; b++) {
        hz[b] = bands.get(b).band().midHz();
        mean[b] = low[b] = high[b] = simLow[b] = simHigh[b] = Double.NaN;
        if (bands.get(b).outcome() instanceof BandOutcome.Fitted fitted) {
          mean[b] = fitted.mean().meanDb();
          low[b] = fitted.mean().lowDb();
          high[b] = fitted.mean().highDb();
          simLow[b] = mean[b] - fitted.simultaneousHalfDb();
          simHigh[b] = mean[b] + fitted.simultaneousHalfDb();
          lowest = Math.min(lowest, Math.max(simLow[b], mean[b] - WIDEST_DB));
          highest = Math.max(highest, Math.min(simHigh[b], mean[b] + WIDEST_DB));
        }
      }
    }

    /**
     * Takes out what lies beyond the axis, so that the figure can say so; returns whether any did.
     */
    boolean cutTo(Panel.Range range) {
      boolean cut = false;
      for (int b = 0; b < hz.length; b++) {
        if (simLow[b] < range.fromDb() || simHigh[b] > range.toDb()) {
          cut = true;
          simLow[b] = simLow[b] < range.fromDb() ? Double.NaN : simLow[b];
          simHigh[b] = simHigh[b] > range.toDb() ? Double.NaN : simHigh[b];
        }
      }
      return cut;
    }
  }
}
