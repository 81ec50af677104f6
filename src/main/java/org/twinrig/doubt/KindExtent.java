package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.StudentT;

/**
 * How far the units of a kind reach, for graphs like none of them.
 *
 * <p>Two measures, each held against the units' own. The whole curve: {@code log d²} of {@link
 * KindLikelihood}, units left out one by one; limit at {@code t_{n-1, 0.997}}. The deep bass, where
 * leaks are: the mean level up to 80 Hz; limits at {@code t_{n-1}}, 0.99 below and 0.9975 above,
 * for a leak only takes away. Of the statistics tried (whole curves, bass by covariance, the shape
 * of a leak as a matched filter) the plain mean found most leaky units.
 */
final class KindExtent {
  private static final double DEEP_BASS_HZ = 80;
  private static final double WHOLE_LEVEL = 0.998;
  private static final double LOW_LEVEL = 0.993;
  private static final double HIGH_LEVEL = 0.998;

  /** Units that differ by less do not differ. */
  private static final double LEAST = 0.1;

  private final KindLikelihood all;
  private final DecompositionSolver inverse;
  private final double distanceMean;
  private final double distanceSpread;
  private final int bass;
  private final double bassMean;
  private final double bassSpread;
  private final int units;

  /** What was found outside, and in which words it is told. */
  record Outside(Doubt.Found found, String what) {
    String cause(String kind) {
      return what.formatted(kind);
    }
  }

  /** Of groups that scatter alike, the extent of the first. */
  KindExtent(List<double[][]> groups, KindLikelihood.Shrinkage shrinkage, BandGrid grid, Run run) {
    double[][] own = groups.get(0);
    this.units = own.length;
    this.inverse = KindLikelihood.solver(KindLikelihood.pooled(groups, shrinkage));
    this.all = KindLikelihood.of(own, inverse);
    double[] distances = new double[units];
    for (int u = 0; u < units; u++) {
      List<double[][]> rest = new ArrayList<>(groups);
      rest.set(0, Contest.without(own, u));
      distances[u] =
          Math.log(
              KindLikelihood.of(
                      rest.get(0), KindLikelihood.solver(KindLikelihood.pooled(rest, shrinkage)))
                  .distance(own[u]));
    }
    double widen = Math.sqrt(1 + 1.0 / units);
    this.distanceMean = StatUtils.mean(distances);
    this.distanceSpread = widen * Math.max(LEAST, Math.sqrt(StatUtils.variance(distances)));
    int step = Math.max(1, grid.perOctave() / 3);
    this.bass =
        (int)
            IntStream.range(0, own[0].length)
                .filter(i -> grid.band(run.from() + (i + 1) * step - 1).upperHz() <= DEEP_BASS_HZ)
                .count();
    double[] levels = Arrays.stream(own).mapToDouble(this::bass).toArray();
    this.bassMean = StatUtils.mean(levels);
    this.bassSpread = widen * Math.max(LEAST, Math.sqrt(StatUtils.variance(levels)));
  }

  private double bass(double[] curve) {
    return Arrays.stream(curve, 0, bass).average().orElse(0);
  }

  /** What lies outside of a curve with so much covariance of its own. */
  Optional<Outside> of(double[] curve, double[][] own) {
    double ownBass = 0;
    for (int i = 0; i < bass; i++) {
      for (int j = 0; j < bass; j++) {
        ownBass += own[i][j] / bass / bass;
      }
    }
    double spread = Math.sqrt(bassSpread * bassSpread + Math.max(0, ownBass));
    double away = bass(curve) - bassMean;
    double limit = quantile(away < 0 ? LOW_LEVEL : HIGH_LEVEL) * spread;
    if (bass > 0 && Math.abs(away) > limit) {
      String side = away < 0 ? "below" : "above";
      String why = away < 0 ? ": leaky pads or tips, or a kind of its own" : "";
      return Optional.of(
          new Outside(
              new Doubt.Found(GraphDoubts.db(Math.abs(away)), GraphDoubts.db(limit)),
              "its deep bass lies %s %s the mean of the study's units of `%%s` (doubted from %s on)%s."
                  .formatted(GraphDoubts.db(Math.abs(away)), side, GraphDoubts.db(limit), why)));
    }
    double added =
        inverse.solve(new Array2DRowRealMatrix(own, false)).getTrace() / (1 + 1.0 / units);
    double most =
        Math.exp(distanceMean + quantile(WHOLE_LEVEL) * distanceSpread) + Math.max(0, added);
    double distance = all.distance(curve);
    return distance <= most
        ? Optional.empty()
        : Optional.of(
            new Outside(
                new Doubt.Found(deviations(distance, curve), deviations(most, curve)),
                "over the whole curve it is %s from the study's units of `%%s` (doubted from %s on)."
                    .formatted(deviations(distance, curve), deviations(most, curve))));
  }

  private double quantile(double level) {
    return StudentT.oneSided(level, units - 1.0);
  }

  private static String deviations(double distance, double[] curve) {
    return Numbers.fixed(Math.sqrt(distance / curve.length), 1) + " standard deviations";
  }
}
