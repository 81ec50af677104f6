package org.twinrig.workbench;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.report.figure.MarkStrip;
import org.twinrig.workbench.view.Strip;

/** Draws mark strips as the figures do: full bar, half bar, hatching, gap. */
final class Strips {
  private static final double HEIGHT = 14;
  private static final int[] TICKS_HZ = {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000};

  private final double fromHz;
  private final double toHz;

  private Strips(double fromHz, double toHz) {
    this.fromHz = fromHz;
    this.toHz = toHz;
  }

  static Strips over(BandGrid grid) {
    return new Strips(grid.lowerHz(), grid.upperHz());
  }

  /** Runs of bands that look alike. */
  Strip runs(String words, List<MarkedBand> bands) {
    List<Strip.Bar> bars = new ArrayList<>();
    for (int start = 0; start < bands.size(); ) {
      int end = start + 1;
      while (end < bands.size() && alike(bands.get(start), bands.get(end))) {
        end++;
      }
      double highHz = bands.get(end - 1).band().upperHz();
      bars.add(bar(bands.get(start), bands.get(start).band().lowerHz(), highHz, ""));
      start = end;
    }
    return new Strip(words, bars, ticks());
  }

  /** Every band by itself, each a link. */
  Strip bands(String words, List<MarkedBand> bands, Function<MarkedBand, String> path) {
    return new Strip(
        words,
        bands.stream()
            .map(b -> bar(b, b.band().lowerHz(), b.band().upperHz(), path.apply(b)))
            .toList(),
        ticks());
  }

  private static boolean alike(MarkedBand a, MarkedBand b) {
    return a.mark() == b.mark() && a.empty() == b.empty();
  }

  private Strip.Bar bar(MarkedBand band, double lowHz, double highHz, String path) {
    Mark shown = band.empty() ? Mark.RELIABLE : band.mark(); // a gap has a frame to point at
    String style =
        switch (shown) {
          case RELIABLE -> band.empty() ? "gap" : "full";
          case CAUTION -> "half";
          case UNRELIABLE -> "hatched";
        };
    String word = band.empty() ? "no data" : band.mark().word();
    return new Strip.Bar(
        MarkStrip.path(shown, new Rectangle2D.Double(x(lowHz), 0, x(highHz) - x(lowHz), HEIGHT)),
        style,
        Numbers.hertz(lowHz) + " to " + Numbers.hertz(highHz) + ": " + word,
        path);
  }

  private List<Strip.Tick> ticks() {
    return IntStream.of(TICKS_HZ)
        .filter(hz -> hz >= fromHz * 0.98 && hz <= toHz * 1.02)
        .mapToObj(
            hz ->
                new Strip.Tick(
                    String.format(Locale.ROOT, "%.1f", x(hz)),
                    hz < 1000 ? Integer.toString(hz) : hz / 1000 + "k"))
        .toList();
  }

  private double x(double hz) {
    return Strip.WIDTH * Math.log(hz / fromHz) / Math.log(toHz / fromHz);
  }
}
