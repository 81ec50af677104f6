package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.twinrig.band.Band;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * How well a seating repeats: the standard deviation between seatings of the same unit on the same
 * fixture.
 *
 * <p>{@code s_r² = Σ_i Σ_s (y_is - ybar_i)² / ν}, {@code ν = Σ_i (n_i - 1)}: {@code y_is} the level
 * of seating {@code s} of unit {@code i} at a band, sides averaged, relative to the anchor; {@code
 * n_i} its seatings. It is the repeatability standard deviation of ISO 5725-2, 7.4.5.1, the unit in
 * the place of the laboratory. The check unit is left out: its seatings are spread over sessions,
 * so that their scatter holds the sessions' too.
 *
 * @param kind the kind
 * @param from on the old fixture, one entry per band at which any unit was seated twice
 * @param to on the new fixture, likewise
 */
public record Repeatability(String kind, List<AtBand> from, List<AtBand> to) {

  /** Copies the lists. */
  public Repeatability {
    from = List.copyOf(from);
    to = List.copyOf(to);
  }

  /**
   * One band on one fixture.
   *
   * @param index position of the band in the study's grid
   * @param band the band
   * @param units with two seatings or more
   * @param degreesOfFreedom {@code ν}
   * @param sd {@code s_r} with its interval
   */
  public record AtBand(
      int index, Band band, int units, int degreesOfFreedom, DeviationInterval sd) {}

  /**
   * The repeatability of a kind.
   *
   * @param paired its units
   * @param checkUnit the unit to leave out, if any
   * @param confidence of the intervals
   * @return per fixture and band
   */
  public static Repeatability of(
      PairedUnits paired, Optional<String> checkUnit, double confidence) {
    return new Repeatability(
        paired.kind(),
        on(paired, paired.from(), checkUnit, confidence),
        on(paired, paired.to(), checkUnit, confidence));
  }

  private static List<AtBand> on(
      PairedUnits paired,
      PairedUnits.OnFixture fixture,
      Optional<String> checkUnit,
      double confidence) {
    List<AtBand> bands = new ArrayList<>();
    for (int b = 0; b < paired.grid().size(); b++) {
      double squares = 0;
      int freedom = 0;
      int repeated = 0;
      for (int i : paired.at(b).members()) {
        if (checkUnit.filter(paired.units().get(i)::equals).isPresent()) {
          continue;
        }
        double[] levels = levels(fixture.curves().get(i), b);
        double mean = DoubleStream.of(levels).average().orElse(0);
        squares += DoubleStream.of(levels).map(y -> (y - mean) * (y - mean)).sum();
        freedom += levels.length - 1;
        repeated += levels.length > 1 ? 1 : 0;
      }
      if (freedom > 0) {
        DeviationInterval sd =
            DeviationInterval.of(Math.sqrt(squares / freedom), freedom, confidence);
        bands.add(new AtBand(b, paired.grid().band(b), repeated, freedom, sd));
      }
    }
    return bands;
  }

  private static double[] levels(List<Levels> seatings, int band) {
    return seatings.stream()
        .map(s -> s.level(band))
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .toArray();
  }

  /**
   * The variance that one seating on each fixture adds to a difference between them.
   *
   * @param index position of a band in the study's grid
   * @return {@code s_rA² + s_rB²} in dB², or nothing when it is not known on either fixture
   */
  public OptionalDouble seatingVariance(int index) {
    Optional<AtBand> old = at(from, index);
    Optional<AtBand> now = at(to, index);
    return old.isPresent() && now.isPresent()
        ? OptionalDouble.of(square(old.get()) + square(now.get()))
        : OptionalDouble.empty();
  }

  private static Optional<AtBand> at(List<AtBand> bands, int index) {
    return bands.stream().filter(b -> b.index == index).findFirst();
  }

  private static double square(AtBand at) {
    return at.sd.sdDb() * at.sd.sdDb();
  }

  /**
   * Root mean square of the standard deviation over a region.
   *
   * @param bands of one fixture
   * @param region the region
   * @return dB, or nothing when no band of it is known
   */
  public static OptionalDouble over(List<AtBand> bands, Region region) {
    OptionalDouble mean =
        bands.stream()
            .filter(b -> region.holds(b.band))
            .mapToDouble(Repeatability::square)
            .average();
    return mean.isPresent()
        ? OptionalDouble.of(Math.sqrt(mean.getAsDouble()))
        : OptionalDouble.empty();
  }
}
