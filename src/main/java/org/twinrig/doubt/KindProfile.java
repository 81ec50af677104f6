package org.twinrig.doubt;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PairedUnits;

/**
 * What old graphs of a kind look like: the study's units on the old fixture, and how far a seating
 * strays there.
 *
 * @param units mean level of each unit over its seatings, pinned, dB, to a hundredth
 * @param seatings how many seatings such a mean holds: their harmonic mean over units and bands
 * @param seatingVariance variance between seatings by band, dB²; missing where it is not known
 * @param seatingCorrelation correlation of a seating's deviations so many bands apart, from 0 on;
 *     beyond the last it counts as 0
 * @param seatingDetail what one seating adds to the energies of {@link FineStructure}, dB²
 * @param detailSpread standard deviation of the logarithm of those energies between seatings; 0
 *     where no unit was seated twice
 */
public record KindProfile(
    String kind,
    List<Levels> units,
    double seatings,
    Levels seatingVariance,
    List<Double> seatingCorrelation,
    List<Double> seatingDetail,
    double detailSpread) {

  public KindProfile {
    units = List.copyOf(units);
    seatingCorrelation = List.copyOf(seatingCorrelation);
    seatingDetail = List.copyOf(seatingDetail);
    if (seatingDetail.size() != FineStructure.SIZE) {
      throw new IllegalArgumentException(
          "a seating's fine structure has %d energies, but %d were given"
              .formatted(FineStructure.SIZE, seatingDetail.size()));
    }
  }

  /** The profile of a kind's units as they were captured. */
  public static KindProfile of(PairedUnits kind) {
    PairedUnits.OnFixture old = kind.from();
    List<Levels> deviations =
        IntStream.range(0, kind.units().size())
            .boxed()
            .flatMap(u -> deviations(old.curves().get(u), old.means().get(u)).stream())
            .toList();
    double seatings =
        1
            / old.seatings().stream()
                .flatMap(List::stream)
                .filter(n -> n > 0)
                .mapToDouble(n -> 1.0 / n)
                .average()
                .orElse(1);
    double[][] energies =
        deviations.stream().map(d -> FineStructure.energies(d, Run.WHOLE)).toArray(double[][]::new);
    return new KindProfile(
        kind.kind(),
        old.means().stream().map(u -> u.map(db -> rounded(db, 100))).toList(),
        rounded(seatings, 1000),
        old.seatingVariance().map(v -> rounded(v, 1e4)),
        correlation(deviations, old.seatingVariance()),
        mean(energies),
        spread(energies));
  }

  private static double rounded(double value, double parts) {
    return Math.rint(value * parts) / parts;
  }

  /** Each seating less the unit's mean, as far as one seating strays; none of units seated once. */
  private static List<Levels> deviations(List<Levels> seatings, Levels mean) {
    double scale = Math.sqrt(seatings.size() / Math.max(1.0, seatings.size() - 1));
    return seatings.size() < 2
        ? List.of()
        : seatings.stream().map(s -> s.minus(mean).map(d -> d * scale)).toList();
  }

  /** The autocorrelation of standardised deviations over all bands, up to one octave. */
  private static List<Double> correlation(List<Levels> deviations, Levels variance) {
    double[] sums = new double[variance.grid().perOctave()];
    for (Levels deviation : deviations) {
      double[] z = new double[variance.grid().size()];
      Arrays.setAll(
          z,
          b ->
              deviation.has(b) && variance.level(b).orElse(0) > 0
                  ? deviation.db(b) / Math.sqrt(variance.db(b))
                  : 0);
      for (int lag = 0; lag < sums.length; lag++) {
        for (int b = lag; b < z.length; b++) {
          sums[lag] += z[b] * z[b - lag];
        }
      }
    }
    double whole = sums[0];
    return Arrays.stream(sums).mapToObj(s -> whole > 0 ? rounded(s / whole, 1e4) : 0).toList();
  }

  private static List<Double> mean(double[][] energies) {
    double[] mean = new double[FineStructure.SIZE];
    for (double[] own : energies) {
      Arrays.setAll(mean, i -> mean[i] + own[i] / energies.length);
    }
    return Arrays.stream(mean).mapToObj(e -> rounded(e, 1e6)).toList();
  }

  private static double spread(double[][] energies) {
    double sum = 0;
    for (int i = 0; i < FineStructure.SIZE && energies.length > 1; i++) {
      int feature = i;
      sum +=
          StatUtils.variance(
              Arrays.stream(energies)
                  .mapToDouble(e -> Math.log(e[feature] + FineStructure.FLOOR_DB2))
                  .toArray());
    }
    return rounded(Math.sqrt(sum / FineStructure.SIZE), 1000);
  }

  /** The grid of all levels. */
  public BandGrid grid() {
    return seatingVariance.grid();
  }

  /** Whether what one seating adds is known: of units that are seated once nobody knows. */
  boolean knowsSeatings() {
    return detailSpread > 0;
  }

  /** Correlation of what one seating strays at two bands so far apart. */
  double correlation(int lag) {
    return lag < seatingCorrelation.size() ? seatingCorrelation.get(lag) : 0;
  }

  /** Covariance of one seating's deviations at two bands, dB². */
  double seatingCovariance(int one, int other) {
    return correlation(Math.abs(one - other))
        * Math.sqrt(seatingVariance.level(one).orElse(0) * seatingVariance.level(other).orElse(0));
  }

  /** The units as they would look smoothed; a smoothing no wider than a band changes nothing. */
  KindProfile smoothed(Smoothing smoothing) {
    return smoothing.fraction() == 0 || smoothing.fraction() >= grid().perOctave()
        ? this
        : new KindProfile(
            kind,
            units.stream().map(u -> smoothed(u, smoothing)).toList(),
            seatings,
            seatingVariance,
            seatingCorrelation,
            seatingDetail,
            detailSpread);
  }

  /** Band levels averaged over a fraction of an octave about each, in the smoothing's domain. */
  private static Levels smoothed(Levels levels, Smoothing smoothing) {
    boolean power = smoothing.domain() == Smoothing.Domain.POWER;
    double half = levels.grid().perOctave() / (2.0 * smoothing.fraction());
    int reach = (int) Math.ceil(half);
    double[] db = new double[levels.grid().size()];
    for (int b = 0; b < db.length; b++) {
      double sum = 0;
      double weights = 0;
      for (int k = Math.max(0, b - reach); k <= Math.min(db.length - 1, b + reach); k++) {
        double weight = Math.max(0, Math.min(1, half + 0.5 - Math.abs(k - b)));
        if (levels.has(k)) {
          sum += weight * (power ? Math.pow(10, levels.db(k) / 10) : levels.db(k));
          weights += weight;
        }
      }
      double mean = sum / weights;
      db[b] = levels.has(b) ? (power ? 10 * Math.log10(mean) : mean) : Double.NaN;
    }
    return Levels.copyOf(levels.grid(), db);
  }
}
