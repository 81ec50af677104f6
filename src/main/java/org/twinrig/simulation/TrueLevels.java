package org.twinrig.simulation;

import java.util.List;
import java.util.stream.LongStream;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Side;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * What endlessly many good seatings would find: band levels, anchored as every capture is, in the
 * mean over them, dB. Lost seals, drift and noise have no part in it.
 *
 * <p>The mean over seatings, not the level of the middle seating, is what many seatings tend to: a
 * leak's effect in decibels is skewed, so the two differ.
 */
record TrueLevels(List<Bench> benches, BandGrid grid, Anchor anchor) {
  static final int POPULATION = 2000;

  private static final int SEATINGS = 64;
  private static final int SEATINGS_IN_POPULATION = 6;
  private static final long POPULATION_SEED = 0x706F70756C617465L;

  /**
   * The true mean transfer of a kind, {@code E[L_B - L_A]}, the expectation over the units of the
   * kind and over the good seatings of each. Worked out by Monte Carlo over so many evenly spread
   * units, {@link #POPULATION} of them where it is told, for each of them the mean over 6 evenly
   * spread seatings per fixture. Its units come from a seed of their own, so that all studies of a
   * kind share one truth.
   */
  Levels meanTransfer(SimulatedKind kind, int units) {
    List<double[]> transfers =
        LongStream.range(0, units)
            .parallel()
            .mapToObj(number -> transferDb(evenly(kind, number), SEATINGS_IN_POPULATION))
            .toList();
    // Summed in the order of the units, so that the number of threads cannot change a digit.
    double[] sum = new double[grid.size()];
    for (double[] transfer : transfers) {
      for (int b = 0; b < sum.length; b++) {
        sum[b] += transfer[b] / units;
      }
    }
    return Levels.copyOf(grid, sum);
  }

  private static Specimen evenly(SimulatedKind kind, long number) {
    return new Specimen(POPULATION_SEED, kind, number, List.of(Side.M), Specimen.Sampling.EVEN);
  }

  /** Mean over its sides of a unit's level on the new fixture minus that on the old. */
  Levels transfer(Specimen specimen) {
    return Levels.copyOf(grid, transferDb(specimen, SEATINGS));
  }

  /** Mean over its sides of a unit's level on one fixture: 0 the old one, 1 the new one. */
  Levels on(int fixture, Specimen specimen) {
    return Levels.copyOf(grid, levelsDb(specimen, SEATINGS, fixture));
  }

  private double[] transferDb(Specimen specimen, int seatings) {
    double[] to = levelsDb(specimen, seatings, 1);
    double[] from = levelsDb(specimen, seatings, 0);
    for (int b = 0; b < to.length; b++) {
      to[b] -= from[b];
    }
    return to;
  }

  private double[] levelsDb(Specimen specimen, int seatings, int fixture) {
    Bench bench = benches.get(fixture);
    List<double[]> perSide =
        specimen.sides().stream()
            .map(
                side ->
                    levelsDb(
                        bench,
                        specimen.on(bench.fixture(), side, fixture),
                        specimen.evenPlacements(side, fixture, seatings)))
            .toList();
    double[] levels = new double[grid.size()];
    for (int b = 0; b < levels.length; b++) {
      for (double[] side : perSide) {
        levels[b] += side[b] / perSide.size();
      }
    }
    return levels;
  }

  /** Mean over the given seatings of a side, dB per band. */
  double[] levelsDb(Bench bench, FittedUnit fitted, List<Placement> placements) {
    Chain chain = new Chain(bench, fitted);
    double[] sum = new double[grid.size()];
    for (Placement placement : placements) {
      Levels levels = anchored(chain.levelsDb(fitted.seated(placement, FittedUnit.Seal.GOOD)));
      for (int b = 0; b < sum.length; b++) {
        sum[b] += levels.level(b).orElse(Double.NaN) / placements.size();
      }
    }
    return sum;
  }

  private Levels anchored(double[] levelsDb) {
    Response response = Response.copyOf(benches.get(0).hz(), levelsDb);
    double anchorDb =
        anchor
            .levelOf(response, grid.perOctave())
            .orElseThrow(
                () -> new IllegalArgumentException("the plan's axis does not reach the anchor"));
    return Levels.of(response, grid).map(level -> level - anchorDb);
  }
}
