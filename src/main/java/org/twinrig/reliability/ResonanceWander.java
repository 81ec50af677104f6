package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.StatUtils;
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
    Optional<Range> zone,
    Range searched) {

  /** Fewer units than this say nothing about a feature. */
  static final int LEAST_UNITS = 3;

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

  /** A frequency range, both ends in Hz. */
  public record Range(double fromHz, double toHz) {}

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
    Range searched = new Range(fine.grid().lowerHz(), fine.grid().upperHz());
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
        new WanderZone(positions, searched).under(once, 1),
        searched);
  }

  static double lb(double x) {
    return Math.log(x) / Math.log(2);
  }
}
