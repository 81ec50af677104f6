package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Levels;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Tolerance;

/** The error made on each unit by a transfer that never saw it. */
public final class ErrorFigure {
  private ErrorFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param tolerance the study's tolerance
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(KindOutcome kind, Tolerance tolerance, Caption caption) {
    List<MarkedBand> bands = kind.transfer().bands();
    int n = bands.size();
    double[] hz = bands.stream().mapToDouble(b -> b.band().midHz()).toArray();
    double[] rms = filled(n);
    double[] offset = filled(n);
    double[] low = filled(n);
    double[] high = filled(n);
    double greatest = 4;
    double widest = 0;
    for (int b = 0; b < n; b++) {
      if (bands.get(b).outcome() instanceof BandOutcome.Fitted fitted) {
        rms[b] = fitted.prediction().looRmsDb();
        offset[b] = fitted.prediction().looRmsOffsetDb();
        high[b] = fitted.prediction().halfDb();
        low[b] = -high[b];
        greatest = Math.max(greatest, Math.min(14, high[b]));
        widest = Math.max(widest, high[b]);
      }
    }
    String title =
        TransferFigure.capital(kind.kind()) + ": how far single units miss their prediction";
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted()
                        + ", each left out in turn; "
                        + caption.percent()
                        + " of re-captures should fall inside the pale band"
                        + (widest > greatest
                            ? ", which reaches ± " + Numbers.fixed(widest, 0) + " dB"
                            : ""),
                    "Measured minus predicted, dB",
                    caption.fingerprint()),
                Panel.Range.ofDifferences(-greatest, greatest))
            .withArea(hz, low, high, "prediction interval");
    for (Levels unit : kind.estimate().errors()) {
      double[] errors = new double[n];
      Arrays.setAll(errors, b -> unit.level(b).orElse(Double.NaN));
      panel.withCurve(new Panel.Curve(hz, errors, Ink.UNIT, Ink.HAIR));
    }
    panel
        .withCurve(new Panel.Curve(hz, offset, Ink.OLD_FIXTURE, Ink.DASHED), "RMS, plain mean")
        .withCurve(new Panel.Curve(hz, rms, Ink.TEXT, Ink.CURVE), "RMS")
        .withStrip(TransferFigure.cells(bands));
    withLimit(panel, hz, tolerance.reliable(), greatest, true);
    withLimit(panel, hz, tolerance.caution(), greatest, false);
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("error", kind.kind()),
            title,
            "Leave-one-unit-out errors against frequency, with the prediction interval and marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  /** A limit on either side, where it lies on the graph; it may change with frequency. */
  private static void withLimit(
      Panel panel, double[] hz, DbLimit limit, double greatest, boolean named) {
    for (double sign : new double[] {1, -1}) {
      double[] db = new double[hz.length];
      Arrays.setAll(db, b -> limit.atHz(hz[b]) <= greatest ? sign * limit.atHz(hz[b]) : Double.NaN);
      Panel.Curve curve = new Panel.Curve(hz, db, Ink.FAINT_TEXT, Ink.DOTTED);
      if (named && sign > 0) {
        panel.withCurve(curve, "reliable, caution");
      } else {
        panel.withCurve(curve);
      }
    }
  }

  private static double[] filled(int n) {
    double[] values = new double[n];
    Arrays.fill(values, Double.NaN);
    return values;
  }
}
