package org.twinrig.report.figure;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Anchor;

/** The mean transfer of a kind with its intervals and marks. */
public final class TransferFigure {
  /** An interval wider than this would squeeze everything else: the axis does not follow it. */
  private static final double WIDEST_DB = 12;

  private TransferFigure() {}

  /** Draws a kind; captures were lined up at the anchor. */
  public static Figure of(KindOutcome kind, Caption caption, Anchor anchor) {
    List<MarkedBand> bands = kind.transfer().bands();
    double[] hz = Values.hz(bands);
    double[] mean = Values.fitted(bands, f -> f.mean().meanDb());
    double[] simLow = ends(bands, -1, Double.POSITIVE_INFINITY);
    double[] simHigh = ends(bands, 1, Double.POSITIVE_INFINITY);
    Axis axis =
        Axis.differences(
            anchor instanceof Anchor.None
                ? "New minus old, dB"
                : "New minus old after lining up, dB",
            Values.least(-2, ends(bands, -1, WIDEST_DB)) - 0.5,
            Values.greatest(2, ends(bands, 1, WIDEST_DB)) + 0.5);
    Plot plot =
        Plot.overFrequency(axis)
            .area(
                hz,
                Values.fitted(bands, f -> f.mean().lowDb()),
                Values.fitted(bands, f -> f.mean().highDb()),
                "per band")
            .line(hz, simLow, Ink.OUTLINE, "all bands at once")
            .line(hz, simHigh, Ink.OUTLINE)
            .line(hz, mean, Ink.ESTIMATE, "mean transfer")
            .linedUp(anchor);
    String howToRead =
        "; the %s intervals hold for the mean of the kind, not for a single unit%s"
            .formatted(
                caption.percent(),
                axis.holdsAll(simLow, simHigh) ? "" : "; thin lines leave the axis");
    return caption
        .sheet(finding(kind), howToRead)
        .overFrequency(plot, Stretch.ofBands(bands))
        .figure(
            caption.name("transfer"),
            "Mean difference between the fixtures against frequency, with intervals and marks");
  }

  private static String finding(KindOutcome kind) {
    double reliable = kind.transfer().octaves(Mark.RELIABLE);
    if (reliable == 0) {
      return "no band translates reliably";
    }
    long zones =
        kind.zones().stream().filter(z -> z.mark() == Mark.UNRELIABLE && !z.empty()).count();
    String lost = Numbers.count(zones, "zone cannot be translated", "zones cannot be translated");
    return "%s octaves translate reliably, %s"
        .formatted(Numbers.fixed(reliable, 1), zones == 0 ? "none is lost" : lost);
  }

  /** The lower (-1) or upper (1) end of the interval for all bands at once, no wider than said. */
  private static double[] ends(List<MarkedBand> bands, int sign, double widestDb) {
    return Values.fitted(
        bands, f -> f.mean().meanDb() + sign * Math.min(widestDb, f.simultaneousHalfDb()));
  }
}
