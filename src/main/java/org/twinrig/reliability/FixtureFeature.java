package org.twinrig.reliability;

import java.util.Locale;
import java.util.Optional;
import org.twinrig.internal.Checks;

/**
 * A feature that the units of a kind share: a local extreme of their mean curve against its own
 * smooth over one octave.
 *
 * @param shape peak where the curve stands above its smooth, notch where it falls below
 * @param centre its frequency, Hz, refined by a parabola through three bands in (lg f, dB)
 * @param height at the band of the extreme, dB; negative for a notch
 * @param simultaneousHalfDb half-width in dB of the height's interval that holds at all bands at
 *     once; less than the height's size
 * @param width at half height, octaves; nothing when the curve does not fall that far inside the
 *     range looked at
 * @param sharing how many of them share its sign there
 */
public record FixtureFeature(
    Curve curve,
    Resonance.Shape shape,
    Estimate centre,
    Estimate height,
    double simultaneousHalfDb,
    Optional<Estimate> width,
    int units,
    int sharing) {

  /** Which curve a feature belongs to. */
  public enum Curve {
    /** New minus old: the feature is the fixtures'. */
    TRANSFER,
    /** The old fixture: the feature may as well be the kind's own. */
    FROM,
    /** The new fixture; likewise. */
    TO;

    /** The curve as files write it: for example {@code transfer}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** A value with the ends of its interval. */
  public record Estimate(double value, double low, double high) {
    public Estimate {
      Checks.finite(value, "an estimate");
      Checks.finite(low, "the lower end of an interval");
      Checks.finite(high, "the upper end of an interval");
    }
  }

  public FixtureFeature {
    if (!(simultaneousHalfDb < Math.abs(height.value()))) {
      throw new IllegalArgumentException("the interval of a feature's height must exclude 0");
    }
    if (sharing > units) {
      throw new IllegalArgumentException("more units share a feature than there are");
    }
  }

  /** Share of the units that share its sign: 0 to 1. */
  public double share() {
    return (double) sharing / units;
  }
}
