package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
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
  private final PairedUnits paired;
  private final OctaveContrast contrast;
  private final List<UnitSample> from = new ArrayList<>();
  private final List<UnitSample> to = new ArrayList<>();
  private final List<UnitSample> difference = new ArrayList<>();

  FeatureSamples(PairedUnits paired) {
    this.paired = paired;
    this.contrast = new OctaveContrast(paired.grid());
    for (int b = 0; b < paired.grid().size(); b++) {
      add(b);
    }
  }

  /** One sample per band of the grid. */
  List<UnitSample> of(FixtureFeature.Curve curve) {
    return switch (curve) {
      case TRANSFER -> difference;
      case FROM -> from;
      case TO -> to;
    };
  }

  private void add(int band) {
    int[] members =
        IntStream.range(0, paired.units().size())
            .filter(i -> value(paired.from(), i, band).isPresent())
            .filter(i -> value(paired.to(), i, band).isPresent())
            .toArray();
    UnitSample old = sample(paired.from(), members, band);
    UnitSample now = sample(paired.to(), members, band);
    double[] values = new double[members.length];
    double[] variances = new double[members.length];
    for (int k = 0; k < members.length; k++) {
      values[k] = now.valuesDb()[k] - old.valuesDb()[k];
      variances[k] = now.variances()[k] + old.variances()[k];
    }
    from.add(old);
    to.add(now);
    difference.add(new UnitSample(members, values, variances));
  }

  private OptionalDouble value(PairedUnits.OnFixture fixture, int unit, int band) {
    Levels mean = fixture.means().get(unit);
    return contrast.at(mean, band);
  }

  private UnitSample sample(PairedUnits.OnFixture fixture, int[] members, int band) {
    double[] values = new double[members.length];
    double[] variances = new double[members.length];
    if (members.length > 0) {
      int[] octave = contrast.bands(band);
      double pooled = fixture.seatingVariance(members, octave, contrast.weights()).orElse(0);
      for (int k = 0; k < members.length; k++) {
        List<Integer> seatings = fixture.seatings().get(members[k]);
        int least = IntStream.of(octave).map(seatings::get).min().orElseThrow();
        values[k] = value(fixture, members[k], band).orElseThrow();
        variances[k] = pooled / least;
      }
    }
    return new UnitSample(members, values, variances);
  }
}
