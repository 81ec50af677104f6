package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;

/** Where resonances sit on the old fixture against where they sit on the new one. */
public final class ResonanceFigure {
  /** A resonance that moves no further stays in its own 1/12-octave band. */
  private static final double CORRIDOR = Math.pow(2, 1.0 / 12);

  private static final double[] TICKS_HZ = {
    100, 200, 300, 500, 700, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000, 9000, 10_000, 11_000,
    12_000, 14_000, 17_000, 20_000
  };

  private ResonanceFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing; nothing where too few units show a resonance on both fixtures
   */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    List<ResonanceWander> wanders = kind.wanders();
    if (wanders.isEmpty()) {
      return Optional.empty();
    }
    ResonanceWander.Range range = wanders.get(0).searched();
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(wanders);
    CrossPlot plot =
        new CrossPlot(
                new CrossPlot.Texts(
                    title,
                    caption.counted()
                        + "; strongest notch and peak of every unit from "
                        + Numbers.hertz(wanders.get(0).searched().fromHz())
                        + " to "
                        + Numbers.hertz(wanders.get(0).searched().toHz()),
                    "Frequency on the old fixture, Hz",
                    "Frequency on the new fixture, Hz",
                    caption.fingerprint()),
                axis(range))
            .withRibbon(corridor(range), "moves by no more than 1/12 octave")
            .withLine(diagonal(range), "stays where it is");
    for (ResonanceWander w : wanders) {
      add(plot, w, caption);
    }
    return Optional.of(
        Medium.draw(
            new Medium.Sheet(
                Figure.nameOf("resonance", kind.kind()),
                title,
                "Frequency of the strongest notch and peak of every unit on the new fixture against"
                    + " that on the old one, with a corridor of 1/12 octave",
                CrossPlot.WIDTH,
                CrossPlot.HEIGHT),
            plot::paint));
  }

  private static void add(CrossPlot plot, ResonanceWander w, Caption caption) {
    boolean notch = w.shape() == Resonance.Shape.NOTCH;
    CrossPlot.Look look = notch ? CrossPlot.Look.TRIANGLE : CrossPlot.Look.FULL;
    String name = w.shape().name().toLowerCase(Locale.ROOT);
    plot.withDots(
        w.positions().stream()
            .map(p -> CrossPlot.Dot.of(p.from().hz(), p.to().hz(), look, ""))
            .toList(),
        name + " of a unit (" + w.positions().size() + " of " + caption.units() + " show it)");
    plot.withNote(
        TransferFigure.capital(name)
            + ": mean shift "
            + signed(w.meanShiftOctaves())
            + " ± "
            + Numbers.fixed(w.meanHalfOctaves(), 2)
            + " octaves,");
    plot.withNote(
        "standard deviation "
            + Numbers.fixed(w.sdOctaves(), 2)
            + " ("
            + Numbers.fixed(w.sdLowOctaves(), 2)
            + " to "
            + Numbers.fixed(w.sdHighOctaves(), 2)
            + ", "
            + caption.percent()
            + ")");
  }

  private static String signed(double octaves) {
    String text = Numbers.fixed(octaves, 2);
    return octaves > 0 ? "+" + text : text;
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

  private static CrossPlot.Axis axis(ResonanceWander.Range range) {
    return new CrossPlot.Axis(
        range.fromHz(),
        range.toHz(),
        true,
        Arrays.stream(TICKS_HZ)
            .filter(hz -> hz >= range.fromHz() && hz <= range.toHz())
            .mapToObj(hz -> new CrossPlot.Tick(hz, label(hz)))
            .toList());
  }

  private static String label(double hz) {
    return hz < 1000 ? Long.toString((long) hz) : (long) (hz / 1000) + "k";
  }

  private static CrossPlot.Line diagonal(ResonanceWander.Range range) {
    double[] ends = {range.fromHz(), range.toHz()};
    return new CrossPlot.Line(ends, ends, Ink.AXIS, Ink.THIN);
  }

  private static CrossPlot.Ribbon corridor(ResonanceWander.Range r) {
    // With corners where either edge meets the frame, so that it is cut there and not bent.
    double[] across = {
      r.fromHz(), r.fromHz() * CORRIDOR, r.toHz() / CORRIDOR, r.toHz(),
    };
    double[] low = Arrays.stream(across).map(hz -> hz / CORRIDOR).toArray();
    double[] high = Arrays.stream(across).map(hz -> hz * CORRIDOR).toArray();
    return new CrossPlot.Ribbon(across, low, high, Ink.BAND);
  }
}
