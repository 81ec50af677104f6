package org.twinrig.study;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;

/**
 * The units of one kind that were measured on both fixtures: mean levels on the old and the new
 * fixture, and how far seatings scatter.
 *
 * <p>The unit is what is counted: all seatings and sides of a unit are averaged before two units
 * are compared.
 *
 * @param units in the order of the study's table; each has an accepted seating on both fixtures
 */
public record PairedUnits(
    String kind, BandGrid grid, List<String> units, OnFixture from, OnFixture to) {

  /**
   * What one fixture showed of the units.
   *
   * @param means mean level of each unit over its accepted seatings, {@code ybar_ig(b)}
   * @param seatings for each unit, how many accepted seatings entered each band, {@code n_ig(b)}
   * @param seatingVariance pooled variance between seatings {@code s2_g(b)} in dB², missing where
   *     no unit that takes part was seated twice
   * @param curves for each unit, the curve of every accepted seating {@code y_igs(b)}
   */
  public record OnFixture(
      List<Levels> means,
      List<List<Integer>> seatings,
      Levels seatingVariance,
      List<List<Levels>> curves) {
    public OnFixture {
      means = List.copyOf(means);
      seatings = seatings.stream().map(List::copyOf).toList();
      curves = curves.stream().map(List::copyOf).toList();
    }

    /**
     * Pooled variance between seatings of a weighted sum of bands, {@code cᵀ S_g c} with the pooled
     * covariance {@code S_g} of the seatings; seatings without a level at one of the bands do not
     * count.
     *
     * @param units positions of the units that take part
     * @param weights {@code c}, one per band
     * @return dB²; nothing when no unit was seated twice
     */
    public OptionalDouble seatingVariance(int[] units, int[] bands, double[] weights) {
      double squares = 0;
      int freedom = 0;
      for (int unit : units) {
        double[] sums =
            curves.get(unit).stream()
                .filter(curve -> IntStream.of(bands).allMatch(curve::has))
                .mapToDouble(curve -> weightedSum(curve, bands, weights))
                .toArray();
        double mean = DoubleStream.of(sums).sum() / Math.max(1, sums.length);
        squares += DoubleStream.of(sums).map(v -> (v - mean) * (v - mean)).sum();
        freedom += Math.max(0, sums.length - 1);
      }
      return freedom == 0 ? OptionalDouble.empty() : OptionalDouble.of(squares / freedom);
    }

    private BandSample.Seatings at(int band, int[] members) {
      double reciprocals = 0;
      int freedom = 0;
      for (int unit : members) {
        reciprocals += 1.0 / seatings.get(unit).get(band);
        freedom += seatings.get(unit).get(band) - 1;
      }
      double harmonicMean = members.length / Math.max(reciprocals, Double.MIN_NORMAL);
      return new BandSample.Seatings(seatingVariance.level(band), freedom, harmonicMean);
    }

    private static double weightedSum(Levels curve, int[] bands, double[] weights) {
      double sum = 0;
      for (int k = 0; k < bands.length; k++) {
        sum += weights[k] * curve.db(bands[k]);
      }
      return sum;
    }
  }

  public PairedUnits {
    units = List.copyOf(units);
    if (from.means().size() != units.size() || to.means().size() != units.size()) {
      throw new IllegalArgumentException("every unit needs its levels on both fixtures");
    }
  }

  /**
   * Whether a level that enters a band, of a unit that has one on both fixtures, is known from
   * points further apart than 1/6 octave only.
   */
  public boolean coarse(int band) {
    return members(band)
        .anyMatch(i -> from.means().get(i).isCoarse(band) || to.means().get(i).isCoarse(band));
  }

  /** The units, possibly none, that have a level on both fixtures at a band of the grid. */
  public BandSample at(int band) {
    int[] members = members(band).toArray();
    double varianceFrom = from.seatingVariance().level(band).orElse(0);
    double varianceTo = to.seatingVariance().level(band).orElse(0);
    double[] differences = new double[members.length];
    double[] variances = new double[members.length];
    for (int k = 0; k < members.length; k++) {
      int i = members[k];
      differences[k] = to.means().get(i).db(band) - from.means().get(i).db(band);
      variances[k] =
          varianceFrom / from.seatings().get(i).get(band)
              + varianceTo / to.seatings().get(i).get(band);
    }
    return new BandSample(
        members, differences, variances, from.at(band, members), to.at(band, members));
  }

  private IntStream members(int band) {
    return IntStream.range(0, units.size())
        .filter(i -> from.means().get(i).has(band) && to.means().get(i).has(band));
  }
}
