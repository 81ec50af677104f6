package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.workbench.view.Strip;

/** Draws mark strips as the figures do: full bar, half bar, hatching, gap. */
final class Strips {
  private static final double HEIGHT = 14;
  private static final double HATCH = 5;
  private static final double[] TICKS_HZ = {
    20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000
  };

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
      bars.add(
          bar(
              bands.get(start),
              bands.get(start).band().lowerHz(),
              bands.get(end - 1).band().upperHz(),
              ""));
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
    double left = x(lowHz);
    double right = x(highHz);
    String style = style(band);
    String word = band.empty() ? "no data" : band.mark().word();
    return new Strip.Bar(
        switch (style) {
          case "half" -> box(left, HEIGHT / 2, right);
          case "hatched" -> box(left, 0, right) + hatch(left, right);
          default -> box(left, 0, right);
        },
        style,
        Numbers.hertz(lowHz) + " to " + Numbers.hertz(highHz) + ": " + word,
        path);
  }

  private static String style(MarkedBand band) {
    if (band.empty()) {
      return "gap";
    }
    return band.mark() == Mark.RELIABLE ? "full" : band.mark() == Mark.CAUTION ? "half" : "hatched";
  }

  private static String box(double left, double top, double right) {
    return String.format(Locale.ROOT, "M%.1f %.1fH%.1fV%.1fH%.1fz", left, top, right, HEIGHT, left);
  }

  private static String hatch(double left, double right) {
    StringBuilder path = new StringBuilder();
    double first = Math.floor((left - HEIGHT) / HATCH) * HATCH;
    for (double start = first; start < right; start += HATCH) {
      double from = Math.max(start, left);
      double to = Math.min(start + HEIGHT, right);
      if (to > from) {
        path.append(
            String.format(
                Locale.ROOT,
                "M%.1f %.1fL%.1f %.1f",
                from,
                HEIGHT - (from - start),
                to,
                HEIGHT - (to - start)));
      }
    }
    return path.toString();
  }

  private List<Strip.Tick> ticks() {
    List<Strip.Tick> ticks = new ArrayList<>();
    for (double hz : TICKS_HZ) {
      if (hz >= fromHz * 0.98 && hz <= toHz * 1.02) {
        ticks.add(
            new Strip.Tick(
                String.format(Locale.ROOT, "%.1f", x(hz)),
                hz < 1000 ? Integer.toString((int) hz) : (int) (hz / 1000) + "k"));
      }
    }
    return ticks;
  }

  private double x(double hz) {
    return Strip.WIDTH * Math.log(hz / fromHz) / Math.log(toHz / fromHz);
  }
}
