package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.Repeatability;
import org.twinrig.internal.Numbers;

/** How far seatings scatter on either fixture. */
public final class RepeatabilityFigure {
  /** A range at least this high, so that a quiet kind does not look wild, dB. */
  private static final double LEAST_RANGE = 3;

  private RepeatabilityFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param fixtures their labels
   * @param caption what the drawing carries
   * @return the drawing; nothing where no unit was seated twice on either fixture
   */
  public static Optional<Figure> of(
      KindOutcome kind, CapturesFigure.Fixtures fixtures, Caption caption) {
    Repeatability scatter = kind.repeatability();
    double top =
        java.util.stream.Stream.concat(scatter.from().stream(), scatter.to().stream())
            .flatMap(Optional::stream)
            .mapToDouble(Repeatability.Scatter::highDb)
            .max()
            .orElse(-1);
    if (top < 0) {
      return Optional.empty();
    }
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(scatter);
    double[] hz = kind.paired().grid().bands().stream().mapToDouble(band -> band.midHz()).toArray();
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted()
                        + "; the pale band is the "
                        + caption.percent()
                        + " interval on the new fixture, the dots that on the old one",
                    "Standard deviation between seatings, dB",
                    caption.fingerprint()),
                Panel.Range.ofDifferences(0, Math.max(LEAST_RANGE, top)))
            .withArea(hz, values(scatter.to(), -1), values(scatter.to(), 1), "interval, new")
            .withCurve(curve(hz, values(scatter.from(), -1), true, true))
            .withCurve(curve(hz, values(scatter.from(), 1), true, true))
            .withCurve(curve(hz, values(scatter.from(), 0), true, false), fixtures.from())
            .withCurve(curve(hz, values(scatter.to(), 0), false, false), fixtures.to())
            .withStrip(TransferFigure.cells(kind.transfer().bands()));
    return Optional.of(
        Medium.draw(
            new Medium.Sheet(
                Figure.nameOf("repeatability", kind.kind()),
                title,
                "Standard deviation between seatings against frequency on both fixtures, with its"
                    + " interval and marks",
                Panel.WIDTH,
                panel.height()),
            panel::paint));
  }

  private static String finding(Repeatability scatter) {
    double from = meanSquare(scatter.from());
    double to = meanSquare(scatter.to());
    if (from <= 0 || to <= 0) {
      return "how far seatings scatter";
    }
    double ratio = Math.sqrt(to / from);
    return ratio >= 1
        ? "seatings scatter " + Numbers.fixed(ratio, 1) + " times as far on the new fixture"
        : "seatings scatter " + Numbers.fixed(1 / ratio, 1) + " times as far on the old fixture";
  }

  private static double meanSquare(List<Optional<Repeatability.Scatter>> bands) {
    return bands.stream()
        .flatMap(Optional::stream)
        .mapToDouble(s -> s.sdDb() * s.sdDb())
        .average()
        .orElse(0);
  }

  private static Panel.Curve curve(double[] hz, double[] db, boolean old, boolean interval) {
    return old
        ? new Panel.Curve(hz, db, Ink.OLD_FIXTURE, interval ? Ink.DOTTED : Ink.DASHED)
        : new Panel.Curve(hz, db, Ink.NEW_FIXTURE, Ink.CURVE);
  }

  /** The standard deviation (0) or an end of its interval (-1, 1); NaN breaks the curve. */
  private static double[] values(List<Optional<Repeatability.Scatter>> bands, int which) {
    double[] values = new double[bands.size()];
    Arrays.setAll(
        values,
        b ->
            bands
                .get(b)
                .map(s -> which == 0 ? s.sdDb() : which < 0 ? s.lowDb() : s.highDb())
                .orElse(Double.NaN));
    return values;
  }
}
