package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.linalg.Matrix;
import org.twinrig.regression.MeanCurve;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.UnitSample;
import org.twinrig.reliability.FixtureFeature.Estimate;

/**
 * Where a local extreme of a mean curve lies and how wide it is, with intervals.
 *
 * <p>Place and width are functions of the mean curve. Their intervals come from {@code R = 999}
 * resamples of whole units, {@code n-1} of {@code n} with replacement, in which the extreme is the
 * greatest value inside the study's half-height extent; each unit keeps its weight. They are
 * expanded percentile intervals: the order statistics of rank {@code ⌊(R+1)·Φ(-t)⌋} from either
 * end, with {@code t} Student's quantile on {@code n-1} degrees of freedom, widened where needed to
 * hold the study's own value. Plain percentiles would be too narrow with few units.
 *
 * <p>Sources: Hesterberg 2015, The American Statistician 69:371, section 5.2 (expanded
 * percentiles); Rao and Wu 1988, J. Am. Stat. Assoc. 83:231 ({@code n-1} draws); from memory.
 */
final class FeatureShape {
  private final BandGrid grid;
  private final List<UnitSample> samples;
  private final List<Optional<MeanCurve.Mean>> means;
  private final double confidence;
  private final Resamples resamples;

  /** The whole curve, NaN where it has no mean. */
  private final double[] whole;

  FeatureShape(
      BandGrid grid,
      List<UnitSample> samples,
      List<Optional<MeanCurve.Mean>> means,
      Resamples resamples,
      double confidence) {
    this.grid = grid;
    this.resamples = resamples;
    this.samples = samples;
    this.means = List.copyOf(means);
    this.confidence = confidence;
    this.whole = new double[grid.size()];
    Arrays.setAll(whole, b -> this.means.get(b).map(m -> m.estimate().meanDb()).orElse(Double.NaN));
  }

  /** How many units share the mean's sign at a band. */
  int sharing(int band) {
    double sign = Math.signum(whole[band]);
    return (int)
        Arrays.stream(samples.get(band).valuesDb()).filter(v -> Math.signum(v) == sign).count();
  }

  /**
   * Whether the curve has a local extreme at a band, away from 0, that is the greatest as far as
   * the curve stays above half of it.
   */
  boolean greatestAt(int band) {
    double sign = Math.signum(whole[band]);
    double height = sign * whole[band];
    if (sign == 0 || !(sign * whole[band - 1] < height) || !(sign * whole[band + 1] <= height)) {
      return false;
    }
    for (int step = -1; step <= 1; step += 2) {
      for (int b = band + step; above(whole, b, sign, height / 2); b += step) {
        if (sign * whole[b] > height) {
          return false;
        }
      }
    }
    return true;
  }

  private static boolean above(double[] curve, int b, double sign, double level) {
    return b >= 0 && b < curve.length && sign * curve[b] > level;
  }

  FixtureFeature feature(FixtureFeature.Curve curve, int band, MeanCurve.Mean mean) {
    RandomEffects.Result height = mean.estimate();
    double sign = Math.signum(height.meanDb());
    int first = band;
    while (above(whole, first - 1, sign, sign * whole[band] / 2)) {
      first--;
    }
    int last = band;
    while (above(whole, last + 1, sign, sign * whole[band] / 2)) {
      last++;
    }
    Extreme all = Extreme.of(whole, sign, first, last);
    List<Extreme> redrawn = redrawn(sign, first, last);
    int tail = tail(height.degreesOfFreedom());
    return new FixtureFeature(
        curve,
        sign > 0 ? Resonance.Shape.PEAK : Resonance.Shape.NOTCH,
        centre(all, redrawn, tail),
        new Estimate(height.meanDb(), height.lowDb(), height.highDb()),
        mean.simultaneousHalfDb(),
        width(all, redrawn, tail),
        height.units(),
        sharing(band));
  }

  private int tail(int degreesOfFreedom) {
    double t = StudentT.twoSided(confidence, degreesOfFreedom);
    double share = new NormalDistribution(null, 0, 1).cumulativeProbability(-t);
    return Math.max(1, (int) Math.floor((resamples.size() + 1) * share));
  }

  /** The extreme in every resample of the units. */
  private List<Extreme> redrawn(double sign, int first, int last) {
    int beyond = grid.perOctave() / 2;
    int from = Math.max(0, first - beyond);
    int to = Math.min(whole.length - 1, last + beyond);
    int units = resamples.counts()[0].length;
    double[][] weights = new double[units][to - from + 1];
    double[][] weighted = new double[units][to - from + 1];
    for (int b = from; b <= to; b++) {
      if (means.get(b).isPresent()) {
        weigh(b, weights, weighted, b - from);
      }
    }
    Matrix counts = Matrix.ofRows(resamples.counts());
    Matrix sums = counts.times(Matrix.ofRows(weights));
    Matrix weightedSums = counts.times(Matrix.ofRows(weighted));
    double[] curve = new double[whole.length];
    Arrays.fill(curve, Double.NaN);
    List<Extreme> extremes = new ArrayList<>(resamples.size());
    for (int r = 0; r < resamples.size(); r++) {
      for (int b = from; b <= to; b++) {
        double sum = sums.get(r, b - from);
        // A resample may draw none of a band's units: then the study's own value stands.
        curve[b] = sum == 0 ? whole[b] : weightedSums.get(r, b - from) / sum;
      }
      extremes.add(Extreme.of(curve, sign, first, last));
    }
    return extremes;
  }

  private void weigh(int band, double[][] weights, double[][] weighted, int column) {
    UnitSample sample = samples.get(band);
    double tauSquared = means.get(band).orElseThrow().estimate().tauSquared();
    double[] total = RandomEffects.totalVariances(sample.variances(), tauSquared);
    for (int k = 0; k < sample.size(); k++) {
      weights[sample.members()[k]][column] = 1 / total[k];
      weighted[sample.members()[k]][column] = 1 / total[k] * sample.valuesDb()[k];
    }
  }

  private Estimate centre(Extreme all, List<Extreme> redrawn, int tail) {
    double[] places = redrawn.stream().mapToDouble(Extreme::place).sorted().toArray();
    return new Estimate(
        hz(all.place()),
        hz(Math.min(all.place(), places[tail - 1])),
        hz(Math.max(all.place(), places[places.length - tail])));
  }

  private double hz(double place) {
    return grid.band(0).midHz() * Math.pow(10, 0.3 * place / grid.perOctave());
  }

  private Optional<Estimate> width(Extreme all, List<Extreme> redrawn, int tail) {
    double octaves = grid.band(0).octaves();
    double[] widths = redrawn.stream().mapToDouble(e -> e.widthBands).sorted().toArray();
    double high = Math.max(all.widthBands, widths[widths.length - tail]);
    return Double.isFinite(high)
        ? Optional.of(
            new Estimate(
                octaves * all.widthBands,
                octaves * Math.min(all.widthBands, widths[tail - 1]),
                octaves * high))
        : Optional.empty();
  }

  /**
   * An extreme: its place in bands of the grid, refined by a parabola through three bands, and its
   * width in bands at half its height, between the points where straight lines between bands cross
   * it; infinite where the curve does not fall that far on either side.
   */
  private record Extreme(double place, double widthBands) {
    static Extreme of(double[] curve, double sign, int first, int last) {
      double[] depth = Arrays.stream(curve).map(db -> -sign * db).toArray();
      int at = first;
      for (int b = first + 1; b <= last; b++) {
        at = depth[b] < depth[at] ? b : at;
      }
      double half = -depth[at] / 2;
      return new Extreme(
          at + Resonance.vertex(depth, at),
          Resonance.crossing(depth, at, -1, half) + Resonance.crossing(depth, at, 1, half));
    }
  }
}
