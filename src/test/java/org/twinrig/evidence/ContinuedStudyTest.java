package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The limit of a planned study against normal units drawn one by one: captured, planned, then gone
 * on with. What is counted rests on none of the formulas of {@link Plan}.
 */
class ContinuedStudyTest {
  private static final int STUDIES = 4000;

  /** True variances: of units, of a seating on the old and on the new fixture, dB². */
  private record Truth(double units, double from, double to) {}

  private record Units(Truth truth, Design design, Random random) {
    /** Row per unit: true difference, then its seatings on the old, then on the new fixture. */
    double[][] draw() {
      double[][] units = new double[design.units()][];
      for (int i = 0; i < units.length; i++) {
        units[i] = new double[1 + design.seatingsFrom() + design.seatingsTo()];
        for (int k = 0; k < units[i].length; k++) {
          boolean old = k <= design.seatingsFrom();
          double variance = k == 0 ? truth.units : old ? truth.from : truth.to;
          units[i][k] = random.nextGaussian() * Math.sqrt(variance);
        }
      }
      return units;
    }

    double[] old(double[] unit, int seatings) {
      return Arrays.copyOfRange(unit, 1, 1 + seatings);
    }

    double[] fresh(double[] unit, int seatings) {
      int start = 1 + design.seatingsFrom();
      return Arrays.copyOfRange(unit, start, start + seatings);
    }

    /** loo_rms² of the first units with the first seatings. */
    double looMeanSquare(double[][] units, Design of) {
      double[] differences =
          Arrays.stream(units)
              .limit(of.units())
              .mapToDouble(
                  u -> u[0] + mean(fresh(u, of.seatingsTo())) - mean(old(u, of.seatingsFrom())))
              .toArray();
      double n = of.units();
      double all = mean(differences);
      return Arrays.stream(differences).map(d -> Math.pow((d - all) * n / (n - 1), 2)).sum() / n;
    }
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double pooled(List<double[]> seatings) {
    double sum = 0;
    int freedom = 0;
    for (double[] of : seatings) {
      double mean = mean(of);
      sum += Arrays.stream(of).map(v -> (v - mean) * (v - mean)).sum();
      freedom += of.length - 1;
    }
    return sum / freedom;
  }

  private static BandVariance found(Units units, double[][] drawn, Design pilot) {
    List<double[]> first = Arrays.stream(drawn).limit(pilot.units()).toList();
    double from = pooled(first.stream().map(u -> units.old(u, pilot.seatingsFrom())).toList());
    double to = pooled(first.stream().map(u -> units.fresh(u, pilot.seatingsTo())).toList());
    return new BandVariance(
        pilot.units(),
        1,
        units.looMeanSquare(drawn, pilot),
        0,
        0,
        new BandVariance.Seating(
            from, pilot.seatingsFrom(), pilot.units() * (pilot.seatingsFrom() - 1)),
        new BandVariance.Seating(to, pilot.seatingsTo(), pilot.units() * (pilot.seatingsTo() - 1)));
  }

  @ParameterizedTest
  @CsvSource({
    // units' variance, seatings' on old and new; small study; what it is gone on to
    "1.0, 0.2, 0.3,  8, 2, 16, 2",
    "1.0, 0.2, 0.3,  8, 2, 40, 4",
    "0.3, 0.8, 1.5,  8, 2, 12, 6",
    "0.3, 0.8, 1.5, 12, 3, 12, 8",
    "1.0, 1.0, 1.0, 16, 2, 24, 5",
    "0.5, 0.1, 2.0, 10, 2, 10, 10"
  })
  void nearlyAllFinishedStudiesStayBelowTheLimit(
      double unitsVariance, double from, double to, int n0, int m0, int n, int m) {
    Design pilot = new Design(n0, m0, m0);
    Design planned = new Design(n, m, m);
    Units units = new Units(new Truth(unitsVariance, from, to), planned, new Random(7));
    int below = 0;
    double[] ratios = new double[STUDIES];
    for (int study = 0; study < STUDIES; study++) {
      double[][] drawn = units.draw();
      ZoneVariance zone = new ZoneVariance(List.of(found(units, drawn, pilot)), 0.95);
      ZoneVariance finished = new ZoneVariance(List.of(found(units, drawn, planned)), 0.95);
      double half = finished.presentHalfDb();
      below += half <= zone.upperHalfDb(planned) ? 1 : 0;
      ratios[study] = half / zone.halfDb(planned);
    }
    double share = (double) below / STUDIES;
    // Three Monte Carlo standard errors are 0.014. Where seating scatter is most of what was found,
    // the limit is too wide: the errors of both estimates go together and are joined as if not.
    assertTrue(share >= 0.94 && share <= 0.999, () -> "share below the limit: " + share);
    Arrays.sort(ratios);
    assertEquals(1, ratios[STUDIES / 2], 0.1, "every other study reaches what is expected");
  }
}
