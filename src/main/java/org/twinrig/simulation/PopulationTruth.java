package org.twinrig.simulation;

import java.util.List;
import java.util.stream.LongStream;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Side;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

/**
 * What a study of endlessly many units and seatings would find.
 *
 * <p>The true mean transfer of a kind is {@code E[L_B - L_A]}, the expectation over the units of
 * the kind and over the good seatings of each, with {@code L} the anchored band levels in dB.
 * Worked out by Monte Carlo over 2000 evenly spread units, for each of them the mean over 6 evenly
 * spread seatings per fixture; lost seals, drift and noise have no part in it. Its units come from
 * a seed of their own, so that all studies of a kind share one truth.
 */
final class PopulationTruth {
  static final int UNITS = 2000;
  private static final int SEATINGS = 6;
  private static final long POPULATION_SEED = 0x706F70756C617465L;

  private final Bench bench;
  private final SeatingMean mean;
  private final int units;

  PopulationTruth(Bench bench, BandGrid grid, Anchor anchor) {
    this(bench, grid, anchor, UNITS);
  }

  PopulationTruth(Bench bench, BandGrid grid, Anchor anchor, int units) {
    this.units = units;
    this.bench = bench;
    this.mean = new SeatingMean(bench.hz(), grid, anchor);
  }

  Levels meanTransfer(SimulatedKind kind) {
    List<double[]> transfers =
        LongStream.range(0, units)
            .parallel()
            .mapToObj(number -> unitTransfer(kind, number))
            .toList();
    // Summed in the order of the units, so that the number of threads cannot change a digit.
    double[] sum = new double[mean.grid().size()];
    for (double[] transfer : transfers) {
      for (int b = 0; b < sum.length; b++) {
        sum[b] += transfer[b] / units;
      }
    }
    return Levels.copyOf(mean.grid(), sum);
  }

  private double[] unitTransfer(SimulatedKind kind, long number) {
    return new Specimen(POPULATION_SEED, kind, number, List.of(Side.M), Specimen.Sampling.EVEN)
        .transferDb(bench, mean, SEATINGS);
  }
}
