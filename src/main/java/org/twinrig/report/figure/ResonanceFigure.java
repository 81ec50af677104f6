package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;

/** Where resonances sit on the old fixture against where they sit on the new one. */
public final class ResonanceFigure {
  private static final double CORRIDOR = Math.pow(2, 1.0 / 12);

  private static final double[] TICKS_HZ = {
    100, 200, 300, 500, 700, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000, 9000, 10_000, 11_000,
    12_000, 14_000, 17_000, 20_000
  };

  private ResonanceFigure() {}

  /** Draws one kind; nothing where too few units show a resonance on both fixtures. */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    List<ResonanceWander> wanders = kind.wanders();
    if (wanders.isEmpty()) {
      return Optional.empty();
    }
    FrequencyRange range = wanders.get(0).searched();
    double[] ends = {range.fromHz(), range.toHz()};
    Plot plot =
        new Plot(
                axis("Frequency on the old fixture, Hz", range),
                axis("Frequency on the new fixture, Hz", range),
                false)
            .area(
                ends,
                Arrays.stream(ends).map(hz -> hz / CORRIDOR).toArray(),
                Arrays.stream(ends).map(hz -> hz * CORRIDOR).toArray(),
                "moves by no more than 1/12 octave")
            .line(ends, ends, Ink.FRAME, "stays where it is");
    List<String> notes = new ArrayList<>();
    for (ResonanceWander w : wanders) {
      add(plot, notes, w, caption);
    }
    String howToRead =
        "; strongest notch and peak of every unit from %s to %s"
            .formatted(Numbers.hertz(range.fromHz()), Numbers.hertz(range.toHz()));
    return Optional.of(
        caption
            .sheet(finding(wanders), howToRead)
            .square(plot, notes)
            .figure(
                caption.name("resonance"),
                "Frequency of the strongest notch and peak of every unit on the new fixture against"
                    + " that on the old one, with a corridor of 1/12 octave"));
  }

  private static void add(Plot plot, List<String> notes, ResonanceWander w, Caption caption) {
    String name = w.shape().name().toLowerCase(Locale.ROOT);
    boolean notch = w.shape() == Resonance.Shape.NOTCH;
    plot.with(
        new Plot.Dots(
            Values.of(w.positions(), p -> p.from().hz()),
            Values.of(w.positions(), p -> p.to().hz()),
            notch ? SeriesMarkers.TRIANGLE_DOWN : SeriesMarkers.CIRCLE,
            notch ? Ink.OLD_FIXTURE : Ink.NEW_FIXTURE),
        "%s of a unit (%s of %s show it)".formatted(name, w.positions().size(), caption.units()));
    notes.add(
        "%s: mean shift %s%s ± %s octaves,"
            .formatted(
                Figure.capital(name),
                w.meanShiftOctaves() > 0 ? "+" : "",
                Numbers.fixed(w.meanShiftOctaves(), 2),
                Numbers.fixed(w.meanHalfOctaves(), 2)));
    notes.add(
        "standard deviation %s (%s to %s, %s)"
            .formatted(
                Numbers.fixed(w.sdOctaves(), 2),
                Numbers.fixed(w.sdLowOctaves(), 2),
                Numbers.fixed(w.sdHighOctaves(), 2),
                caption.percent()));
  }

  private static String finding(List<ResonanceWander> wanders) {
    long all = wanders.stream().mapToLong(w -> w.positions().size()).sum();
    long still =
        wanders.stream()
            .flatMap(w -> w.positions().stream())
            .filter(p -> Math.abs(p.shiftOctaves()) <= 1.0 / 12)
            .count();
    return still + " of " + all + " resonances stay within 1/12 octave of their place";
  }

  private static Axis axis(String words, FrequencyRange range) {
    List<Double> ticks =
        Arrays.stream(TICKS_HZ)
            .filter(hz -> hz >= range.fromHz() && hz <= range.toHz())
            .boxed()
            .toList();
    return Axis.logarithmic(words, range.fromHz(), range.toHz(), ticks, ticks);
  }
}
