package org.twinrig.report.figure;

import java.awt.Rectangle;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Zone;
import org.twinrig.response.Anchor;
import org.twinrig.translation.TransferFunction;

/** The mean difference of several kinds as small graphs with one level axis. */
public final class DifferenceGraphs {
  private static final double STEP_DB = 5;

  /** IEC 60263: one decade is as long as 25 dB. */
  public static final double DB_PER_DECADE = 25;

  private final Axis db;

  /** Graphs of all kinds that will be drawn, so that they can be compared. */
  public DifferenceGraphs(List<TransferFunction> kinds) {
    double reach =
        kinds.stream()
            .flatMap(DifferenceGraphs::means)
            .mapToDouble(m -> Math.abs(m.db))
            .max()
            .orElse(0);
    double end = Math.max(STEP_DB, Math.ceil(reach / STEP_DB - 1e-9) * STEP_DB);
    this.db = Axis.stepped("dB", -end, end, STEP_DB, DB_PER_DECADE);
  }

  /** The mean difference at a band, new fixture minus old fixture, dB. */
  public record Mean(Band band, double db) {}

  /**
   * One kind, lined up at the anchor, over the strip of its zones, as an inline SVG as wide as its
   * place.
   */
  public String svg(TransferFunction kind, List<Zone> zones, Anchor anchor) {
    String name = Figure.nameOf("difference", kind.kind());
    return SvgText.inline(
        name,
        "graph",
        SvgText.TELEPHONE,
        (d, width) -> {
          double[] mean = Values.fitted(kind.bands(), f -> f.mean().meanDb());
          Rectangle box = place(width, db);
          new Plot(Axis.fewFrequencies(20, 100, 1000, 10_000), db, false)
              .line(Values.hz(kind.bands()), mean, Ink.NEW)
              .linedUp(anchor)
              .paint(d, box);
          return MarkStrip.paintBelow(d, Stretch.ofZones(zones), box);
        });
  }

  /** The place of a plot with IEC 60263's proportions in a width, with room for its ticks. */
  static Rectangle place(int width, Axis up) {
    int across = width - 44;
    return new Rectangle(32, 20, across, (int) Math.round(up.height(across / 3.0)));
  }

  /** Where the mean departs most from 0, the lowest of several alike; nothing without estimate. */
  public static Optional<Mean> largest(TransferFunction kind) {
    return means(kind)
        .max(
            Comparator.comparingDouble((Mean m) -> Math.abs(m.db))
                .thenComparing(m -> -m.band.midHz()));
  }

  private static Stream<Mean> means(TransferFunction kind) {
    return kind.bands().stream()
        .map(MarkedBand::outcome)
        .filter(BandOutcome.Fitted.class::isInstance)
        .map(BandOutcome.Fitted.class::cast)
        .map(f -> new Mean(f.band(), f.mean().meanDb()));
  }
}
