package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Parallel;
import org.twinrig.regression.MeanCurve;
import org.twinrig.regression.UnitSample;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * Finds the features that the units of a kind share: in the mean transfer, where they are the
 * fixtures' own, and on either fixture.
 *
 * <p>With {@code g_i(b)} the unit's curve minus its own smooth over one octave, {@code h(b)} the
 * random-effects mean of {@code g_i(b)} over units, and its simultaneous interval from the study's
 * sign flips, a feature is a local extreme of {@code h}
 *
 * <ul>
 *   <li>that is a maximum above 0 or a minimum below 0,
 *   <li>whose simultaneous interval excludes 0,
 *   <li>whose sign at least 80 % of the units share at its band,
 *   <li>and that is the greatest as far as the curve does not fall to half its height: what is less
 *       is the shoulder of a greater one.
 * </ul>
 *
 * <p>A tall feature raises the smooth around it, so that up to half an octave beside it stand
 * extremes of the other sign, about as high as its height times its width in octaves: they are in
 * the definition, and its shadow.
 *
 * <p>Units are weighted by what is known of {@code g_i}; where all units have equally many seatings
 * {@code h} is exactly the mean transfer minus its own smooth. The half octave at either end of the
 * grid is not looked at. With one band per octave a curve is its own smooth and has no feature.
 *
 * <p>Centre and width have intervals from resamples of whole units: see {@link FeatureShape}. The
 * height has the pointwise interval; the simultaneous one stands beside it and allows for having
 * looked at every band.
 */
public record FixtureFeatures(double confidence, long seed, int threads) {
  /** At least this share of the units must share a feature's sign. */
  public static final double LEAST_SHARE = 0.8;

  /** So many that {@code (R+1)·α/2} is whole at the usual confidences. */
  private static final int RESAMPLES = 999;

  private static final List<FixtureFeature.Curve> ALL = List.of(FixtureFeature.Curve.values());

  public FixtureFeatures {
    Checks.fraction(confidence, "confidence");
  }

  /** The curves of a kind against their smooth in the order of {@link FixtureFeature.Curve}. */
  public record Result(BandGrid grid, List<Contrast> curves) {
    public Result {
      curves = List.copyOf(curves);
    }

    /**
     * The features of all curves: those of the transfer first, then the old fixture's, rising in
     * frequency.
     */
    public List<FixtureFeature> all() {
      return curves.stream().flatMap(curve -> curve.features().stream()).toList();
    }

    /** One curve against its smooth. */
    public Contrast of(FixtureFeature.Curve curve) {
      return curves.get(ALL.indexOf(curve));
    }
  }

  /**
   * A mean curve against its smooth: {@code h(b)} with its intervals, nothing where the octave
   * around a band is not covered by three units; and its features, rising in frequency.
   */
  public record Contrast(List<Optional<MeanCurve.Mean>> bands, List<FixtureFeature> features) {
    public Contrast {
      bands = List.copyOf(bands);
      features = List.copyOf(features);
    }
  }

  /**
   * A curve minus its own smooth over one octave, dB; missing where the octave is not wholly
   * covered.
   */
  public static Levels contrast(Levels curve) {
    return FeatureSamples.contrast(curve);
  }

  public Result of(PairedUnits paired) {
    FeatureSamples samples = new FeatureSamples(paired);
    Resamples resamples = Resamples.drawn(paired.units().size(), RESAMPLES, seed);
    return new Result(
        paired.grid(),
        Parallel.map(ALL, threads, c -> contrast(paired, c, samples.of(c), resamples)));
  }

  private Contrast contrast(
      PairedUnits paired,
      FixtureFeature.Curve curve,
      List<UnitSample> samples,
      Resamples resamples) {
    List<Optional<MeanCurve.Mean>> means =
        new MeanCurve(confidence).fit(samples, paired.grid().perOctave());
    FeatureShape shape = new FeatureShape(paired.grid(), samples, means, resamples, confidence);
    return new Contrast(means, features(curve, means, shape));
  }

  private static List<FixtureFeature> features(
      FixtureFeature.Curve curve, List<Optional<MeanCurve.Mean>> means, FeatureShape shape) {
    List<FixtureFeature> features = new ArrayList<>();
    for (int b = 1; b < means.size() - 1; b++) {
      Optional<MeanCurve.Mean> mean = means.get(b);
      if (mean.isPresent()
          && Math.abs(mean.get().estimate().meanDb()) > mean.get().simultaneousHalfDb()
          && shape.greatestAt(b)
          && shape.sharing(b) >= LEAST_SHARE * mean.get().estimate().units()) {
        features.add(shape.feature(curve, b, mean.get()));
      }
    }
    features.sort(Comparator.comparingDouble(f -> f.centre().value()));
    return features;
  }
}
