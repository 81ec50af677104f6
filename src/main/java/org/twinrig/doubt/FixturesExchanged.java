package org.twinrig.doubt;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.study.PairedUnits;

/**
 * Whether a unit's captures are entered under the wrong fixture.
 *
 * <p>{@code g = Q(d - m) - Q(-d - m)}, {@code d} its difference new minus old, {@code m} the mean
 * of the others of its kind, {@code Q} the mean over bands of squares divided by their variance,
 * averaged over a third of an octave to either side: how much nearer it is to its kind with the
 * fixtures exchanged. Doubted where {@code g} exceeds {@code 3 + 30/(n - 3)}, the first distance is
 * twice the second or more, and the second less than 4: exchanged, it must be as others are.
 *
 * <p>The limits were set on the impedance simulator with pairs of heads and on the curve simulator
 * with other kinds (6 units seated once, 12 and 20 three times), and raised from {@code 2 + 24/(n -
 * 3)} afterwards, on further such studies, for all checks of units together. Our choice; no source.
 *
 * <p>It cannot find what fixtures that agree make no difference to, nor a single capture.
 */
public final class FixturesExchanged {
  /** The doubt as files name it. */
  public static final String DOUBT = "fixtures exchanged";

  private static final int FEWEST_UNITS = 4;

  /** So many times nearer, too: what is far from both is odd, not exchanged. */
  private static final double LEAST_RATIO = 2;

  /** In variances; a unit whose captures are another's is far from its kind either way. */
  private static final double MOST_TURNED = 4;

  /**
   * A unit as entered and with the fixtures exchanged.
   *
   * @param units of its kind
   * @param kept its distance as entered
   * @param turned its distance exchanged
   */
  public record Exchange(String unit, int units, double kept, double turned) {
    /** By how much nearer it is exchanged. */
    public double gain() {
      return kept - turned;
    }

    private boolean doubted(double limit) {
      return kept > LEAST_RATIO * turned && turned < MOST_TURNED && gain() > limit;
    }
  }

  private FixturesExchanged() {}

  /** By how much nearer to the kind a unit must be the other way round. */
  static double limit(int units) {
    return 3.0 + 30.0 / (units - 3);
  }

  /** The ratio of every unit of a kind, whatever its limit. */
  public static List<Exchange> units(PairedUnits kind) {
    int n = kind.units().size();
    if (n < FEWEST_UNITS) {
      return List.of();
    }
    KindCurves curves = new KindCurves(kind);
    return IntStream.range(0, n)
        .mapToObj(
            u -> {
              double[] mean = curves.difference.mean(u);
              double[] variance = curves.difference.variance(u);
              double[] own = curves.difference.curves[u];
              double[] turned = Arrays.stream(own).map(d -> -d).toArray();
              double kept = KindCurves.distance(KindCurves.minus(own, mean), variance);
              double other = KindCurves.distance(KindCurves.minus(turned, mean), variance);
              return new Exchange(kind.units().get(u), n, kept, other);
            })
        .filter(e -> Double.isFinite(e.gain()))
        .toList();
  }

  /** A doubt for every unit that is entered the wrong way round. */
  public static List<Doubt> of(PairedUnits kind) {
    return units(kind).stream()
        .filter(e -> e.doubted(limit(e.units)))
        .map(FixturesExchanged::unit)
        .toList();
  }

  private static Doubt unit(Exchange found) {
    String limit = Numbers.fixed(limit(found.units), 1);
    String size = Numbers.against(found.gain(), limit(found.units), 1);
    return Doubt.open(
        Doubt.Subject.UNIT,
        found.unit,
        "",
        DOUBT,
        new Doubt.Found(size + " variances", limit + " variances"),
        "the other way round its difference between the fixtures is nearer to its kind's by %s variances between units (doubted from %s on): its captures are entered under the wrong fixture."
            .formatted(size, limit),
        "Exchange the fixtures of its rows in the table of captures.");
  }
}
