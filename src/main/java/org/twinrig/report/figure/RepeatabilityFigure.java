package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.Repeatability;
import org.twinrig.internal.Numbers;
import org.twinrig.study.Study;

/** How far seatings scatter on either fixture. */
public final class RepeatabilityFigure {
  /** A range at least this high, so that a quiet kind does not look wild, dB. */
  private static final double LEAST_RANGE = 3;

  private RepeatabilityFigure() {}

  /** Draws one kind of a study; nothing where no unit was seated twice on either fixture. */
  public static Optional<Figure> of(KindOutcome kind, Study study, Caption caption) {
    List<Optional<Repeatability.Scatter>> from = kind.repeatability().from();
    List<Optional<Repeatability.Scatter>> to = kind.repeatability().to();
    double[] oldHigh = Values.known(from, Repeatability.Scatter::highDb);
    double[] newHigh = Values.known(to, Repeatability.Scatter::highDb);
    double top = Values.greatest(-1, oldHigh, newHigh);
    if (top < 0) {
      return Optional.empty();
    }
    double[] hz = Values.of(kind.paired().grid().bands(), band -> band.midHz());
    Axis axis =
        Axis.differences("Standard deviation between seatings, dB", 0, Math.max(LEAST_RANGE, top));
    Ink.Pen ends = new Ink.Pen(Ink.OLD_FIXTURE, Ink.DOTTED);
    Plot plot =
        Plot.overFrequency(axis)
            .area(hz, Values.known(to, Repeatability.Scatter::lowDb), newHigh, "interval, new")
            .line(hz, Values.known(from, Repeatability.Scatter::lowDb), ends)
            .line(hz, oldHigh, ends)
            .line(
                hz, Values.known(from, Repeatability.Scatter::sdDb), Ink.OLD, study.from().label())
            .line(hz, Values.known(to, Repeatability.Scatter::sdDb), Ink.NEW, study.to().label());
    String howToRead =
        "; the pale band is the %s interval on the new fixture, the dots that on the old one"
            .formatted(caption.percent());
    return Optional.of(
        caption
            .sheet(finding(from, to), howToRead)
            .overFrequency(plot, Stretch.ofBands(kind.transfer().bands()))
            .figure(
                caption.name("repeatability"),
                "Standard deviation between seatings against frequency on both fixtures, with its"
                    + " interval and marks"));
  }

  private static String finding(
      List<Optional<Repeatability.Scatter>> from, List<Optional<Repeatability.Scatter>> to) {
    double ratio = Math.sqrt(meanSquare(to) / meanSquare(from));
    if (!(ratio > 0) || Double.isInfinite(ratio)) {
      return "how far seatings scatter";
    }
    return "seatings scatter %s times as far on the %s fixture"
        .formatted(Numbers.fixed(ratio >= 1 ? ratio : 1 / ratio, 1), ratio >= 1 ? "new" : "old");
  }

  private static double meanSquare(List<Optional<Repeatability.Scatter>> bands) {
    return bands.stream()
        .flatMap(Optional::stream)
        .mapToDouble(s -> s.sdDb() * s.sdDb())
        .average()
        .orElse(0);
  }
}
