package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.twinrig.band.Band;
import org.twinrig.internal.Numbers;
import org.twinrig.translation.Continuity;
import org.twinrig.translation.Continuity.At;
import org.twinrig.translation.Translation;

/** Old graphs of a kind minus today's captures of their units on the old fixture. */
public final class ContinuityFigure {
  private ContinuityFigure() {}

  /** One figure for every kind with an interval at some band. */
  public static List<Figure> of(Continuity continuity, Translation.Origin origin) {
    return continuity.kinds().stream()
        .filter(k -> k.units().size() > 1)
        .map(k -> of(k, continuity.grid().bands(), origin))
        .toList();
  }

  private static Figure of(Continuity.Kind kind, List<Band> bands, Translation.Origin origin) {
    double[] hz = Values.of(bands, Band::midHz);
    double[] mean = values(kind, At::biasDb);
    double[] low = values(kind, a -> a.biasDb() - a.halfDb().orElse(Double.NaN));
    double[] high = values(kind, a -> a.biasDb() + a.halfDb().orElse(Double.NaN));
    Axis axis =
        Axis.differences(
            "Then minus now, dB", Values.least(-2, low) - 0.5, Values.greatest(2, high) + 0.5);
    Plot plot =
        Plot.overFrequency(axis)
            .area(hz, low, high, "interval per band")
            .line(hz, mean, Ink.ESTIMATE, "mean over units");
    return new Sheet(
            "%s: old graphs of %s differ from today by up to %s dB"
                .formatted(
                    Figure.capital(kind.kind()),
                    Numbers.count(kind.units().size(), "unit", "units"),
                    Numbers.fixed(
                        Arrays.stream(mean)
                            .filter(v -> !Double.isNaN(v))
                            .map(Math::abs)
                            .max()
                            .orElse(0),
                        1)),
            "both on "
                + origin.from()
                + ", mean of units, after lining up; 0 dB where nothing changed",
            origin.fingerprint())
        .overFrequency(plot, List.of())
        .figure(
            Figure.nameOf("continuity", kind.kind()),
            "Mean of old graphs minus captures on the old fixture against frequency, with its"
                + " interval");
  }

  private static double[] values(Continuity.Kind kind, ToDoubleFunction<At> of) {
    return Values.known(kind.bands(), of);
  }
}
