package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.UnitErrors;
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
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(kind);
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted()
                        + ", each left out in turn, the worst in blue; "
                        + caption.percent()
                        + " of re-captures should fall in the pale band"
                        + (widest > greatest
                            ? ", up to ± " + Numbers.fixed(widest, 0) + " dB"
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
    withWorst(panel, hz, kind);
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

  /** How far units are missed over all bands, and which one most. */
  private static String finding(KindOutcome kind) {
    List<UnitErrors> units =
        kind.evidence().leftOut().units().getOrDefault(Optional.empty(), List.of());
    double rms =
        Math.sqrt(units.stream().mapToDouble(u -> u.rmsDb() * u.rmsDb()).average().orElse(0));
    return kind.evidence()
        .leftOut()
        .worst(Optional.empty())
        .map(
            worst ->
                "units miss their prediction by "
                    + Numbers.fixed(rms, 1)
                    + " dB, "
                    + worst.unit()
                    + " by "
                    + Numbers.fixed(worst.rmsDb(), 1)
                    + " dB (RMS)")
        .orElse("how far single units miss their prediction");
  }

  private static void withWorst(Panel panel, double[] hz, KindOutcome kind) {
    Optional<String> worst =
        kind.evidence().leftOut().worst(Optional.empty()).map(UnitErrors::unit);
    if (worst.isPresent()) {
      Levels unit = kind.estimate().errors().get(kind.estimate().units().indexOf(worst.get()));
      double[] errors = new double[hz.length];
      Arrays.setAll(errors, b -> unit.level(b).orElse(Double.NaN));
      panel.withCurve(new Panel.Curve(hz, errors, Ink.NEW_FIXTURE, Ink.THIN));
    }
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
