package org.twinrig.reliability;

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
  private final PairedUnits paired;
  private final OctaveContrast contrast;
  private final List<Levels> old;
  private final List<Levels> now;

  FeatureSamples(PairedUnits paired) {
    this.paired = paired;
    this.contrast = new OctaveContrast(paired.grid());
    this.old = paired.from().means().stream().map(contrast::of).toList();
    this.now = paired.to().means().stream().map(contrast::of).toList();
  }

  /** One sample per band of the grid. */
  List<UnitSample> of(FixtureFeature.Curve curve) {
    return IntStream.range(0, paired.grid().size()).mapToObj(b -> of(curve, b)).toList();
  }

  private UnitSample of(FixtureFeature.Curve curve, int band) {
    int[] members =
        IntStream.range(0, old.size())
            .filter(i -> old.get(i).has(band) && now.get(i).has(band))
            .toArray();
    double[] values = new double[members.length];
    double[] variances = new double[members.length];
    if (curve != FixtureFeature.Curve.FROM) {
      add(now, paired.to(), 1, members, band, values, variances);
    }
    if (curve != FixtureFeature.Curve.TO) {
      int sign = curve == FixtureFeature.Curve.FROM ? 1 : -1;
      add(old, paired.from(), sign, members, band, values, variances);
    }
    return new UnitSample(members, values, variances);
  }

  /** Adds one fixture's contrasts and their variances; 0 where no unit was seated twice. */
  private void add(
      List<Levels> contrasts,
      PairedUnits.OnFixture fixture,
      int sign,
      int[] members,
      int band,
      double[] values,
      double[] variances) {
    int[] octave = contrast.bands(band);
    double pooled = fixture.seatingVariance(members, octave, contrast.weights()).orElse(0);
    for (int k = 0; k < members.length; k++) {
      List<Integer> seatings = fixture.seatings().get(members[k]);
      values[k] += sign * contrasts.get(members[k]).db(band);
      variances[k] += pooled / IntStream.of(octave).map(seatings::get).min().orElseThrow();
    }
  }
}
