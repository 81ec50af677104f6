package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.regression.StudentT;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;

/**
 * How far the level of a unit of one kind scatters from one seating to the next on either fixture.
 *
 * <p>At a band, {@code s = √s2_g}, the pooled standard deviation between seatings, on {@code ν =
 * Σ_i (n_ig - 1)} degrees of freedom over the units that have a level on both fixtures; its
 * interval is {@code s·√(ν/χ²_{ν,(1+C)/2})} to {@code s·√(ν/χ²_{ν,(1-C)/2})} at confidence {@code
 * C}. In the words of ISO 5725-1 it is a repeatability standard deviation with the seating as the
 * only condition that changes.
 *
 * <p>It is assumed that every unit scatters alike and that seatings scatter normally; where a leak
 * now and then opens, the interval is too short.
 *
 * <p>Source: ISO 5725-2:2019, 7.4 (pooled variance); any textbook for the interval, for example
 * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.3.1.
 *
 * <p>On either fixture one entry per band; nothing where no unit was seated twice.
 */
public record Repeatability(
    String kind, List<Optional<Scatter>> from, List<Optional<Scatter>> to, double confidence) {

  public Repeatability {
    from = List.copyOf(from);
    to = List.copyOf(to);
    Checks.fraction(confidence, "confidence");
  }

  /**
   * Scatter between seatings at one band: the units that entered, the harmonic mean of their
   * seatings, {@code ν} of 1 or more, and {@code s} with the ends of its interval, dB.
   */
  public record Scatter(
      Band band,
      int units,
      double seatings,
      int degreesOfFreedom,
      double sdDb,
      double lowDb,
      double highDb) {
    /**
     * How far one seating may lie from the mean of so many others of the same unit on the same
     * fixture: half-width {@code t_ν·s·√(1 + 1/m)}, dB. With one other it is the repeatability
     * limit of ISO 5725-6, which has 1.96 for {@code t} (from memory).
     */
    public double repeatDb(double others, double confidence) {
      return StudentT.twoSided(confidence, degreesOfFreedom) * sdDb * Math.sqrt(1 + 1 / others);
    }

    /** Scatter from a pooled variance {@code s²} in dB². */
    static Scatter of(
        Band band,
        int units,
        double seatings,
        int degreesOfFreedom,
        double variance,
        double confidence) {
      // As χ²; the library makes and seeds an unused generator for the distribution of that name.
      GammaDistribution chi = new GammaDistribution(null, degreesOfFreedom / 2.0, 2);
      double squares = variance * degreesOfFreedom;
      return new Scatter(
          band,
          units,
          seatings,
          degreesOfFreedom,
          Math.sqrt(variance),
          Math.sqrt(squares / chi.inverseCumulativeProbability((1 + confidence) / 2)),
          Math.sqrt(squares / chi.inverseCumulativeProbability((1 - confidence) / 2)));
    }
  }

  public static Repeatability of(PairedUnits paired, double confidence) {
    List<Optional<Scatter>> from = new ArrayList<>();
    List<Optional<Scatter>> to = new ArrayList<>();
    for (int b = 0; b < paired.grid().size(); b++) {
      BandSample sample = paired.at(b);
      from.add(scatter(paired.grid().band(b), sample.size(), sample.from(), confidence));
      to.add(scatter(paired.grid().band(b), sample.size(), sample.to(), confidence));
    }
    return new Repeatability(paired.kind(), from, to, confidence);
  }

  private static Optional<Scatter> scatter(
      Band band, int units, BandSample.Seatings seatings, double confidence) {
    int freedom = seatings.degreesOfFreedom();
    return seatings.variance().isPresent() && freedom > 0
        ? Optional.of(
            Scatter.of(
                band,
                units,
                seatings.harmonicMean(),
                freedom,
                seatings.variance().getAsDouble(),
                confidence))
        : Optional.empty();
  }
}
