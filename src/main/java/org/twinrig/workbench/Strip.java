package org.twinrig.workbench;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.report.figure.MarkStrip;
import org.twinrig.report.figure.Stretch;

/**
 * A mark strip as the figures draw it: full bar, half bar, hatching, gap.
 *
 * @param words what it shows, for those who do not see it
 * @param bars from low to high frequencies
 */
public record Strip(String words, List<Bar> bars, List<Tick> ticks) {
  private static final int WIDTH = 720;
  private static final double HEIGHT = 14;
  private static final int[] TICKS_HZ = {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000};

  /**
   * A run of bands, or one band: SVG path data, its class in the style sheet, and where it leads
   * (empty when nowhere).
   */
  public record Bar(String shape, String style, String title, String path) {}

  public record Tick(String x, String text) {}

  public static Strip runs(String words, KindOutcome kind) {
    BandGrid grid = kind.paired().grid();
    List<Stretch> runs = Stretch.ofBands(kind.transfer().bands());
    return new Strip(words, runs.stream().map(s -> bar(grid, s, "")).toList(), ticks(grid));
  }

  /** Every band by itself, each a link to why it is marked. */
  public static Strip bands(KindOutcome kind) {
    BandGrid grid = kind.paired().grid();
    return new Strip(
        "Marks band by band; each leads to its reasons",
        kind.transfer().bands().stream()
            .map(b -> bar(grid, Stretch.ofBands(List.of(b)).get(0), Pages.band(kind, b)))
            .toList(),
        ticks(grid));
  }

  static String word(MarkedBand band) {
    return band.empty() ? "no data" : band.mark().word();
  }

  private static Bar bar(BandGrid grid, Stretch s, String path) {
    Mark shown = s.mark().orElse(Mark.RELIABLE); // a gap has a frame to point at
    String style =
        switch (shown) {
          case RELIABLE -> s.mark().isEmpty() ? "gap" : "full";
          case CAUTION -> "half";
          case UNRELIABLE -> "hatched";
        };
    double x = x(grid, s.fromHz());
    double width = x(grid, s.toHz()) - x;
    String word = s.mark().map(Mark::word).orElse("no data");
    return new Bar(
        MarkStrip.path(shown, new Rectangle2D.Double(x, 0, width, HEIGHT)),
        style,
        Numbers.hertz(s.fromHz()) + " to " + Numbers.hertz(s.toHz()) + ": " + word,
        path);
  }

  private static List<Tick> ticks(BandGrid grid) {
    return IntStream.of(TICKS_HZ)
        .filter(hz -> hz >= grid.lowerHz() * 0.98 && hz <= grid.upperHz() * 1.02)
        .mapToObj(
            hz ->
                new Tick(
                    String.format(Locale.ROOT, "%.1f", x(grid, hz)),
                    hz < 1000 ? Integer.toString(hz) : hz / 1000 + "k"))
        .toList();
  }

  private static double x(BandGrid grid, double hz) {
    return WIDTH * Math.log(hz / grid.lowerHz()) / Math.log(grid.upperHz() / grid.lowerHz());
  }
}
