package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Levels;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Tolerance;

/** The error made on each unit by a transfer that never saw it. */
public final class ErrorFigure {
  private static final double LEAST_RANGE_DB = 4;
  private static final double WIDEST_DB = 14;

  private ErrorFigure() {}

  /** Draws one kind with the limits of the study's tolerance. */
  public static Figure of(KindOutcome kind, Tolerance tolerance, Caption caption) {
    List<MarkedBand> bands = kind.transfer().bands();
    double[] hz = Values.hz(bands);
    double[] high = Values.fitted(bands, f -> f.prediction().halfDb());
    double widest = Values.greatest(0, high);
    double greatest = Math.max(LEAST_RANGE_DB, Math.min(WIDEST_DB, widest));
    Plot plot =
        Plot.overFrequency(Axis.differences("Measured minus predicted, dB", -greatest, greatest))
            .area(hz, Arrays.stream(high).map(v -> -v).toArray(), high, "prediction interval");
    for (Levels unit : kind.estimate().errors()) {
      plot.line(hz, Values.levels(unit), new Ink.Pen(Ink.UNIT, Ink.HAIR));
    }
    Optional<PredictionErrors> worst = kind.evidence().leftOut().worst(Optional.empty());
    worst
        .map(w -> kind.estimate().errors().get(kind.estimate().units().indexOf(w.unit())))
        .ifPresent(unit -> plot.line(hz, Values.levels(unit), Ink.NEW_THIN));
    plot.line(
            hz,
            Values.fitted(bands, f -> f.prediction().offset().looRmsDb()),
            Ink.OLD,
            "RMS, plain mean")
        .line(
            hz, Values.fitted(bands, f -> f.prediction().errors().looRmsDb()), Ink.ESTIMATE, "RMS");
    limits(plot, hz, tolerance);
    String howToRead =
        (", each left out in turn, the worst in blue; %s of re-captures should fall in the pale"
                + " band%s")
            .formatted(
                caption.percent(),
                widest > greatest ? ", up to ± " + Numbers.fixed(widest, 0) + " dB" : "");
    return caption
        .sheet(
            worst.map(w -> finding(kind, w)).orElse("how far single units miss their prediction"),
            howToRead)
        .overFrequency(plot, Stretch.ofBands(bands))
        .figure(
            caption.name("error"),
            "Leave-one-unit-out errors against frequency, with the prediction interval and marks");
  }

  /** How far units are missed over all bands, and which one most. */
  private static String finding(KindOutcome kind, PredictionErrors worst) {
    List<PredictionErrors> units = kind.evidence().leftOut().ofUnits(Optional.empty());
    double square = units.stream().mapToDouble(u -> u.rmsDb() * u.rmsDb()).average().orElse(0);
    return "units miss their prediction by %s dB, %s by %s dB (RMS)"
        .formatted(
            Numbers.fixed(Math.sqrt(square), 1), worst.unit(), Numbers.fixed(worst.rmsDb(), 1));
  }

  private static void limits(Plot plot, double[] hz, Tolerance tolerance) {
    Ink.Pen pen = new Ink.Pen(Ink.FAINT_TEXT, Ink.DOTTED);
    plot.line(hz, limit(hz, tolerance.reliable(), 1), pen, "reliable, caution")
        .line(hz, limit(hz, tolerance.reliable(), -1), pen)
        .line(hz, limit(hz, tolerance.caution(), 1), pen)
        .line(hz, limit(hz, tolerance.caution(), -1), pen);
  }

  private static double[] limit(double[] hz, DbLimit limit, int sign) {
    return Arrays.stream(hz).map(f -> sign * limit.atHz(f)).toArray();
  }
}
