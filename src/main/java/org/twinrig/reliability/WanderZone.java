package org.twinrig.reliability;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Where a resonance wanders, given how often each unit counts: once each in the study itself, any
 * number of times in a study redrawn from its units.
 */
final class WanderZone {
  /** A shift that scatters less than this moves no feature out of its own 1/12-octave band. */
  private static final double STEADY_OCTAVES = 1.0 / 12;

  private final double[] fromLb;
  private final double[] toLb;
  private final double[] shiftOctaves;
  private final double[] widthOctaves;
  private final ResonanceWander.Range searched;

  WanderZone(List<ResonanceWander.Position> positions, ResonanceWander.Range searched) {
    this.fromLb = each(positions, p -> ResonanceWander.lb(p.from().hz()));
    this.toLb = each(positions, p -> ResonanceWander.lb(p.to().hz()));
    this.shiftOctaves = each(positions, ResonanceWander.Position::shiftOctaves);
    this.widthOctaves =
        each(positions, p -> Math.max(p.from().widthOctaves(), p.to().widthOctaves()));
    this.searched = searched;
  }

  private static double[] each(
      List<ResonanceWander.Position> positions, ToDoubleFunction<ResonanceWander.Position> of) {
    return positions.stream().mapToDouble(of).toArray();
  }

  /**
   * Mean ± 2 SD of the positions on either fixture, at least as wide as the feature, inside the
   * search range: outside it nothing was looked for. Nothing when the shift is steady, or fewer
   * than three positions count.
   *
   * @param inflation factor on every variance over positions: 1 for the study itself
   */
  Optional<ResonanceWander.Range> under(double[] counts, double inflation) {
    double total = 0;
    for (double count : counts) {
      total += count;
    }
    if (total < ResonanceWander.LEAST_UNITS
        || Spread.of(shiftOctaves, counts, total, inflation).sd <= STEADY_OCTAVES) {
      return Optional.empty();
    }
    double halfWidth = Spread.of(widthOctaves, counts, total, inflation).mean / 2;
    Spread from = Spread.of(fromLb, counts, total, inflation);
    Spread to = Spread.of(toLb, counts, total, inflation);
    double low = Math.min(from.low(halfWidth), to.low(halfWidth));
    double high = Math.max(from.high(halfWidth), to.high(halfWidth));
    return Optional.of(
        new ResonanceWander.Range(
            Math.max(Math.pow(2, low), searched.fromHz()),
            Math.min(Math.pow(2, high), searched.toHz())));
  }

  /** Mean and standard deviation of counted values. */
  private record Spread(double mean, double sd) {
    static Spread of(double[] values, double[] counts, double total, double inflation) {
      double sum = 0;
      for (int k = 0; k < values.length; k++) {
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
}
