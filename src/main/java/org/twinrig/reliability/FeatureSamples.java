package org.twinrig.reliability;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.regression.UnitSample;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * What every unit's curve does at a band against its own smooth over one octave, {@code L(b) - Σ_k
 * s_k L(b+k)}: on the old fixture, on the new one, and of the difference between them.
 *
 * <p>The smooth is the mean of the curve, taken as constant within each band, over the octave (base
 * ten, {@code G = 10^(3/10)}) whose middle is the mid-band frequency. With {@code N} bands per
 * octave these are the band itself and {@code ⌊N/2⌋} on either side; for even {@code N} the
 * outermost two lie half inside and count half. Where the octave reaches beyond the grid or over a
 * missing level there is no answer: nothing is extrapolated.
 *
 * <p>The contrast is linear in a unit's levels, so that its sampling variance is that of the same
 * contrast between seatings: {@code v_i = cᵀS_A c/n_iA + cᵀS_B c/n_iB} with the pooled covariance
 * {@code S_g} of the seatings, one term only for a fixture alone, and {@code n_ig} the least number
 * of seatings at any band of the octave. A unit without a level somewhere in the octave, on either
 * fixture, does not take part.
 */
final class FeatureSamples {
  private final PairedUnits paired;
  private final List<Levels> old;
  private final List<Levels> now;

  FeatureSamples(PairedUnits paired) {
    this.paired = paired;
    this.old = paired.from().means().stream().map(FeatureSamples::contrast).toList();
    this.now = paired.to().means().stream().map(FeatureSamples::contrast).toList();
  }

  /** {@code c_k} for the bands from {@code ⌊N/2⌋} below to as many above; they add up to 0. */
  private static double[] weights(int perOctave) {
    int half = perOctave / 2;
    double[] weights = new double[2 * half + 1];
    Arrays.fill(weights, -1.0 / perOctave);
    if (perOctave % 2 == 0) {
      weights[0] /= 2;
      weights[2 * half] /= 2;
    }
    weights[half] += 1;
    return weights;
  }

  /** The contrast of a curve, dB; missing where the octave around a band is not wholly covered. */
  static Levels contrast(Levels curve) {
    double[] weights = weights(curve.grid().perOctave());
    int half = weights.length / 2;
    double[] db = new double[curve.grid().size()];
    Arrays.fill(db, Double.NaN);
    for (int b = half; b + half < db.length; b++) {
      int first = b - half;
      if (IntStream.range(first, first + weights.length).allMatch(curve::has)) {
        db[b] = 0;
        for (int k = 0; k < weights.length; k++) {
          db[b] += weights[k] * curve.db(first + k);
        }
      }
    }
    return Levels.copyOf(curve.grid(), db);
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
    double[] weights = weights(paired.grid().perOctave());
    int first = band - weights.length / 2;
    int[] octave = IntStream.range(first, first + weights.length).toArray();
    double pooled = fixture.seatingVariance(members, octave, weights).orElse(0);
    for (int k = 0; k < members.length; k++) {
      List<Integer> seatings = fixture.seatings().get(members[k]);
      values[k] += sign * contrasts.get(members[k]).db(band);
      variances[k] += pooled / IntStream.of(octave).map(seatings::get).min().orElseThrow();
    }
  }
}
