package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.band.FrequencyRange;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * How far a kind's strongest notch (or peak) moves from the old fixture to the new one.
 *
 * <p>Per unit the shift is {@code lb(f_new/f_old)} octaves. When its standard deviation over units
 * exceeds 1/12 octave the resonance wanders: a correction of level cannot move a notch, so the zone
 * it moves in cannot be better than caution.
 *
 * @param shape notch or peak
 * @param positions the units that show it on both fixtures, three or more
 * @param meanHalfOctaves half-width of the t interval of the mean shift, octaves
 * @param sdOctaves standard deviation of the shift over units, octaves
 * @param sdLowOctaves lower end of its interval (chi-squared; assumes normal shifts), octaves
 * @param sdHighOctaves upper end of it, octaves
 * @param zone where it wanders; nothing when it stays
 * @param searched where it was looked for
 */
public record ResonanceWander(
    Resonance.Shape shape,
    List<Position> positions,
    double meanShiftOctaves,
    double meanHalfOctaves,
    double sdOctaves,
    double sdLowOctaves,
    double sdHighOctaves,
    Optional<FrequencyRange> zone,
    FrequencyRange searched) {

  /** Fewer units than this say nothing about a feature. */
  private static final int LEAST_UNITS = 3;

  /** A shift that scatters less than this moves no feature out of its own 1/12-octave band. */
  private static final double STEADY_OCTAVES = 1.0 / 12;

  public ResonanceWander {
    positions = List.copyOf(positions);
  }

  /** Where one unit's resonance sits on either fixture. */
  public record Position(String unit, Resonance from, Resonance to) {
    /** The paired shift: {@code lb(f_new/f_old)} octaves. */
    public double shiftOctaves() {
      return lb(to.hz() / from.hz());
    }
  }

  /**
   * Looks for a wandering resonance; nothing when fewer than three units show the feature on both
   * fixtures.
   *
   * @param fine the kind's units on a 1/48-octave grid over the search range
   * @param leastProminenceDb features less prominent than this on either fixture do not count; with
   *     the reliable tolerance, a feature too small to spoil a translation by moving
   */
  public static Optional<ResonanceWander> of(
      PairedUnits fine, Resonance.Shape shape, double leastProminenceDb, double confidence) {
    List<Position> positions = new ArrayList<>();
    for (int i = 0; i < fine.units().size(); i++) {
      Levels from = fine.from().means().get(i);
      Levels to = fine.to().means().get(i);
      Optional<Resonance> old = Resonance.strongest(from, shape, leastProminenceDb);
      Optional<Resonance> now = Resonance.strongest(to, shape, leastProminenceDb);
      if (old.isPresent() && now.isPresent()) {
        positions.add(new Position(fine.units().get(i), old.get(), now.get()));
      }
    }
    return positions.size() < LEAST_UNITS
        ? Optional.empty()
        : Optional.of(summarise(fine, shape, positions, confidence));
  }

  private static ResonanceWander summarise(
      PairedUnits fine, Resonance.Shape shape, List<Position> positions, double confidence) {
    int n = positions.size();
    double[] shifts = positions.stream().mapToDouble(Position::shiftOctaves).toArray();
    double mean = StatUtils.mean(shifts);
    double sd = Math.sqrt(StatUtils.variance(shifts));
    double alpha = 1 - confidence;
    double t = StudentT.twoSided(confidence, n - 1);
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, n - 1.0);
    double low = sd * Math.sqrt((n - 1) / chi.inverseCumulativeProbability(1 - alpha / 2));
    double high = sd * Math.sqrt((n - 1) / chi.inverseCumulativeProbability(alpha / 2));
    FrequencyRange searched = new FrequencyRange(fine.grid().lowerHz(), fine.grid().upperHz());
    double[] once = new double[n];
    Arrays.fill(once, 1);
    return new ResonanceWander(
        shape,
        positions,
        mean,
        t * sd / Math.sqrt(n),
        sd,
        low,
        high,
        zone(positions, searched, once, 1),
        searched);
  }

  /**
   * Where a resonance wanders, given how often each unit counts: once each in the study itself, any
   * number of times in a study redrawn from its units.
   *
   * <p>Mean ± 2 SD of the positions on either fixture, at least as wide as the feature, inside the
   * search range: outside it nothing was looked for. Nothing when the shift is steady, or fewer
   * than three positions count.
   *
   * @param inflation factor on every variance over positions: 1 for the study itself
   */
  static Optional<FrequencyRange> zone(
      List<Position> positions, FrequencyRange searched, double[] counts, double inflation) {
    if (Arrays.stream(counts).sum() < LEAST_UNITS
        || Spread.of(positions, Position::shiftOctaves, counts, inflation).sd <= STEADY_OCTAVES) {
      return Optional.empty();
    }
    ToDoubleFunction<Position> width = p -> Math.max(p.from.widthOctaves(), p.to.widthOctaves());
    double halfWidth = Spread.of(positions, width, counts, inflation).mean / 2;
    Spread from = Spread.of(positions, p -> lb(p.from.hz()), counts, inflation);
    Spread to = Spread.of(positions, p -> lb(p.to.hz()), counts, inflation);
    double low = Math.min(from.low(halfWidth), to.low(halfWidth));
    double high = Math.max(from.high(halfWidth), to.high(halfWidth));
    return Optional.of(
        new FrequencyRange(
            Math.max(Math.pow(2, low), searched.fromHz()),
            Math.min(Math.pow(2, high), searched.toHz())));
  }

  /** Mean and standard deviation of counted values. */
  private record Spread(double mean, double sd) {
    static Spread of(
        List<Position> positions,
        ToDoubleFunction<Position> of,
        double[] counts,
        double inflation) {
      double[] values = positions.stream().mapToDouble(of).toArray();
      double total = 0;
      double sum = 0;
      for (int k = 0; k < values.length; k++) {
        total += counts[k];
        sum += counts[k] * values[k];
      }
      double mean = sum / total;
      double squares = 0;
      for (int k = 0; k < values.length; k++) {
        squares += counts[k] * (values[k] - mean) * (values[k] - mean);
      }
      return new Spread(mean, Math.sqrt(inflation * squares / (total - 1)));
    }

    double low(double halfWidth) {
      return mean - Math.max(2 * sd, halfWidth);
    }

    double high(double halfWidth) {
      return mean + Math.max(2 * sd, halfWidth);
    }
  }

  private static double lb(double x) {
    return Math.log(x) / Math.log(2);
  }
}
