package org.twinrig.reliability;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.regression.UnitSample;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * Every unit's {@link OctaveContrast}, band by band: on the old fixture, on the new one, and of the
 * difference between them.
 *
 * <p>The contrast is linear in a unit's levels, so that its sampling variance is that of the same
 * contrast between seatings: {@code v_i = cᵀS_A c/n_iA + cᵀS_B c/n_iB} with the pooled covariance
 * {@code S_g} of the seatings, one term only for a fixture alone, and {@code n_ig} the least number
 * of seatings at any band of the octave. A unit without a level somewhere in the octave, on either
 * fixture, does not take part.
 */
final class FeatureSamples {
  private final int bands;
  private final int units;
  private final OnFixture old;
  private final OnFixture now;

  FeatureSamples(PairedUnits paired) {
    OctaveContrast contrast = new OctaveContrast(paired.grid());
    this.bands = paired.grid().size();
    this.units = paired.units().size();
    this.old = OnFixture.of(contrast, paired.from());
    this.now = OnFixture.of(contrast, paired.to());
  }

  /** One sample per band of the grid. */
  List<UnitSample> of(FixtureFeature.Curve curve) {
    return IntStream.range(0, bands).mapToObj(b -> of(curve, b)).toList();
  }

  private UnitSample of(FixtureFeature.Curve curve, int band) {
    int[] members =
        IntStream.range(0, units)
            .filter(i -> old.means[i].has(band) && now.means[i].has(band))
            .toArray();
    return switch (curve) {
      case FROM -> old.sample(members, band);
      case TO -> now.sample(members, band);
      case TRANSFER -> difference(old.sample(members, band), now.sample(members, band));
    };
  }

  private static UnitSample difference(UnitSample old, UnitSample now) {
    double[] values = new double[old.size()];
    double[] variances = new double[old.size()];
    for (int k = 0; k < values.length; k++) {
      values[k] = now.valuesDb()[k] - old.valuesDb()[k];
      variances[k] = now.variances()[k] + old.variances()[k];
    }
    return new UnitSample(old.members(), values, variances);
  }

  /** Contrasts on one fixture: of the units' means, and of each of their seatings. */
  private static final class OnFixture {
    private final OctaveContrast contrast;
    private final List<List<Integer>> seatings;
    private final Levels[] means;
    private final Levels[][] curves;

    private OnFixture(
        OctaveContrast contrast, List<List<Integer>> seatings, Levels[] means, Levels[][] curves) {
      this.contrast = contrast;
      this.seatings = seatings;
      this.means = means;
      this.curves = curves;
    }

    static OnFixture of(OctaveContrast contrast, PairedUnits.OnFixture fixture) {
      return new OnFixture(
          contrast,
          fixture.seatings(),
          contrasts(contrast, fixture.means()),
          fixture.curves().stream().map(c -> contrasts(contrast, c)).toArray(Levels[][]::new));
    }

    private static Levels[] contrasts(OctaveContrast contrast, List<Levels> curves) {
      return curves.stream().map(contrast::of).toArray(Levels[]::new);
    }

    UnitSample sample(int[] members, int band) {
      double[] values = new double[members.length];
      double[] variances = new double[members.length];
      double pooled = members.length == 0 ? 0 : pooledVariance(members, band);
      for (int k = 0; k < members.length; k++) {
        values[k] = means[members[k]].db(band);
        variances[k] = pooled / leastSeatings(members[k], band);
      }
      return new UnitSample(members, values, variances);
    }

    private int leastSeatings(int unit, int band) {
      int least = Integer.MAX_VALUE;
      for (int b : contrast.bands(band)) {
        least = Math.min(least, seatings.get(unit).get(b));
      }
      return least;
    }

    /** {@code cᵀS_g c}; 0 where no unit was seated twice. */
    private double pooledVariance(int[] members, int band) {
      double squares = 0;
      int freedom = 0;
      for (int unit : members) {
        double[] values =
            Arrays.stream(curves[unit])
                .filter(c -> c.has(band))
                .mapToDouble(c -> c.db(band))
                .toArray();
        double mean = Arrays.stream(values).average().orElse(0);
        for (double value : values) {
          squares += (value - mean) * (value - mean);
        }
        freedom += Math.max(0, values.length - 1);
      }
      return freedom == 0 ? 0 : squares / freedom;
    }
  }
}
