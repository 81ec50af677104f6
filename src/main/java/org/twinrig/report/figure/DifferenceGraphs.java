package org.twinrig.report.figure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.translation.TransferFunction;

/** The mean difference of several kinds as small graphs with one level axis. */
public final class DifferenceGraphs {
  private static final double STEP_DB = 5;

  /** IEC 60263: one decade is as long as 25 dB. */
  public static final double DB_PER_DECADE = 25;

  private final Panel.Range range;

  /**
   * Graphs that can be compared.
   *
   * @param kinds all kinds that will be drawn
   */
  public DifferenceGraphs(List<TransferFunction> kinds) {
    double reach =
        kinds.stream()
            .flatMap(DifferenceGraphs::means)
            .mapToDouble(m -> Math.abs(m.db))
            .max()
            .orElse(0);
    double end = Math.max(STEP_DB, Math.ceil(reach / STEP_DB - 1e-9) * STEP_DB);
    this.range = new Panel.Range(-end, end, STEP_DB, DB_PER_DECADE);
  }

  /**
   * The mean difference at a band.
   *
   * @param band the band
   * @param db new fixture minus old fixture, dB
   */
  public record Mean(Band band, double db) {}

  /**
   * One kind.
   *
   * @param kind the kind
   * @return an inline SVG as wide as its place
   */
  public String svg(TransferFunction kind) {
    List<Optional<FluidGraph.Point>> points =
        kind.bands().stream()
            .map(b -> mean(b).map(m -> new FluidGraph.Point(m.band.midHz(), m.db)))
            .toList();
    return new FluidGraph(range).withCurve(points, Ink.NEW_FIXTURE, Ink.CURVE).svg(true);
  }

  /**
   * Where the mean departs most from 0.
   *
   * @param kind the kind
   * @return nothing when no band has an estimate; the lowest of several alike
   */
  public static Optional<Mean> largest(TransferFunction kind) {
    return means(kind)
        .max(
            Comparator.comparingDouble((Mean m) -> Math.abs(m.db))
                .thenComparing(m -> -m.band.midHz()));
  }

  private static Stream<Mean> means(TransferFunction kind) {
    return kind.bands().stream().flatMap(b -> mean(b).stream());
  }

  private static Optional<Mean> mean(MarkedBand marked) {
    return marked.outcome() instanceof BandOutcome.Fitted fitted
        ? Optional.of(new Mean(fitted.band(), fitted.mean().meanDb()))
        : Optional.empty();
  }
}
