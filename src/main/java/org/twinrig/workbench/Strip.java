package org.twinrig.workbench;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.report.figure.MarkStrip;
import org.twinrig.report.figure.Stretch;

/** Where a mark strip's bars and ticks stand, which are drawn as in the figures. */
public final class Strip {
  private static final int WIDTH = 720;
  private static final double HEIGHT = 14;
  private static final int[] TICKS_HZ = {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000};

  private Strip() {}

  static String word(MarkedBand band) {
    return band.empty() ? "no data" : band.mark().word();
  }

  /** SVG path data of a run of bands; a gap has a frame to point at. */
  public static String path(BandGrid grid, Stretch s) {
    double x = position(grid, s.fromHz());
    double width = position(grid, s.toHz()) - x;
    return MarkStrip.path(
        s.mark().orElse(Mark.RELIABLE), new Rectangle2D.Double(x, 0, width, HEIGHT));
  }

  public static List<Integer> ticksHz(BandGrid grid) {
    return IntStream.of(TICKS_HZ)
        .filter(hz -> hz >= grid.lowerHz() * 0.98 && hz <= grid.upperHz() * 1.02)
        .boxed()
        .toList();
  }

  public static String x(BandGrid grid, double hz) {
    return String.format(Locale.ROOT, "%.1f", position(grid, hz));
  }

  private static double position(BandGrid grid, double hz) {
    return WIDTH * Math.log(hz / grid.lowerHz()) / Math.log(grid.upperHz() / grid.lowerHz());
  }
}
