package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Levels;
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
    double[] low = filled(n);
    double[] high = filled(n);
    double greatest = 4;
    double widest = 0;
    for (int b = 0; b < n; b++) {
      if (bands.get(b).outcome() instanceof BandOutcome.Fitted fitted) {
        rms[b] = fitted.prediction().looRmsDb();
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
        .withCurve(new Panel.Curve(hz, rms, Ink.TEXT, Ink.CURVE), "root mean square")
        .withStrip(TransferFigure.cells(bands));
    double reliable = tolerance.reliable().atHz(1000);
    double caution = tolerance.caution().atHz(1000);
    for (double sign : new double[] {1, -1}) {
      panel.withRule(sign * reliable, sign > 0 ? text("reliable within ", reliable) : "");
      panel.withRule(sign * caution, sign > 0 ? text("caution within ", caution) : "");
    }
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("error", kind.kind()),
            title,
            "Leave-one-unit-out errors against frequency, with the prediction interval and marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  private static String text(String words, double db) {
    return words + Numbers.fixed(db, 1) + " dB (at 1 kHz)";
  }

  private static double[] filled(int n) {
    double[] values = new double[n];
    Arrays.fill(values, Double.NaN);
    return values;
  }
}
