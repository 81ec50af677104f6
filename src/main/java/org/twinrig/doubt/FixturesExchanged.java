package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Study;

/**
 * Whether a unit's captures, or one seating's, are entered under the wrong fixture.
 *
 * <p>Of a unit: {@code g = Q(d - m) - Q(-d - m)}, {@code d} its difference new minus old, {@code m}
 * the mean of the others of its kind, {@code Q} the mean over bands of squares divided by their
 * variance, averaged over a third of an octave to either side: how much nearer it is to its kind
 * with the fixtures exchanged. Of a seating of a unit that is seated three times or more on both:
 * the same of its distance from the mean of the unit's other seatings on its own and on the other
 * fixture, in variances between seatings. Doubted where {@code g} exceeds {@code 2 + 24/(n - 3)},
 * of a seating 12, and the first distance is twice the second or more.
 *
 * <p>The limits were set by 30 studies for each of two designs (6 units seated once, 12 three
 * times) of the impedance simulator on two pairs of heads and of the curve simulator with other
 * kinds: some 1 % of clean studies have a unit above the first, none of 120 a seating above the
 * second. Our choice; no source.
 *
 * <p>It cannot find what fixtures that agree make no difference to.
 */
public final class FixturesExchanged {
  /** The doubt as files name it. */
  public static final String DOUBT = "fixtures exchanged";

  private static final int FEWEST_UNITS = 4;
  private static final int FEWEST_SEATINGS = 3;
  private static final double SEATING_LIMIT = 12;

  /** So many times nearer, too: what is far from both is odd, not exchanged. */
  private static final double LEAST_RATIO = 2;

  /**
   * A unit, or a seating of one on a fixture.
   *
   * @param units of its kind
   * @param seating its position among the accepted ones; -1 for the unit
   * @param ratio of its distance as entered to that exchanged
   * @param gain the first less the second
   */
  public record Exchange(
      String unit, int units, int seating, boolean onNew, double ratio, double gain) {}

  private FixturesExchanged() {}

  /** By how much nearer to the kind a unit must be the other way round. */
  static double limit(int units) {
    return 2.0 + 24.0 / (units - 3);
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
              return new Exchange(kind.units().get(u), n, -1, false, kept / other, kept - other);
            })
        .filter(e -> Double.isFinite(e.ratio))
        .toList();
  }

  /** The ratio of every seating of a kind, whatever its limit. */
  public static List<Exchange> seatings(PairedUnits kind) {
    List<Exchange> found = new ArrayList<>();
    double[] variance = seatingVariance(kind);
    for (int u = 0; u < kind.units().size(); u++) {
      for (boolean onNew : new boolean[] {false, true}) {
        List<Levels> own = (onNew ? kind.to() : kind.from()).curves().get(u);
        List<Levels> other = (onNew ? kind.from() : kind.to()).curves().get(u);
        for (int s = 0; s < own.size(); s++) {
          if (own.size() >= FEWEST_SEATINGS && other.size() >= FEWEST_SEATINGS) {
            double kept = away(own.get(s), own, s, variance);
            double exchanged = away(own.get(s), other, s, variance);
            if (Double.isFinite(kept / exchanged)) {
              found.add(
                  new Exchange(
                      kind.units().get(u),
                      kind.units().size(),
                      s,
                      onNew,
                      kept / exchanged,
                      kept - exchanged));
            }
          }
        }
      }
    }
    return found;
  }

  /** Of a seating, mean of both fixtures, averaged over a third of an octave to either side. */
  private static double[] seatingVariance(PairedUnits kind) {
    double[] old = KindCurves.array(kind.from().seatingVariance());
    double[] now = KindCurves.array(kind.to().seatingVariance());
    double[] mean = new double[old.length];
    Arrays.setAll(mean, b -> (old[b] + now[b]) / 2);
    return KindCurves.smooth(mean, kind.grid());
  }

  /** Mean square distance from the mean of seatings but one. */
  private static double away(Levels curve, List<Levels> seatings, int but, double[] variance) {
    double[][] others =
        IntStream.range(0, seatings.size())
            .filter(s -> s != but)
            .mapToObj(s -> KindCurves.array(seatings.get(s)))
            .toArray(double[][]::new);
    return KindCurves.distance(
        KindCurves.minus(KindCurves.array(curve), KindLikelihood.mean(others)), variance);
  }

  /** A doubt for every unit that is entered the wrong way round, and for single seatings. */
  public static List<Doubt> of(Study study, PairedUnits kind) {
    List<Exchange> all =
        units(kind).stream().filter(e -> e.ratio > LEAST_RATIO && e.gain > limit(e.units)).toList();
    List<Doubt> doubts = new ArrayList<>(all.stream().map(FixturesExchanged::unit).toList());
    List<String> named = all.stream().map(Exchange::unit).toList();
    seatings(kind).stream()
        .filter(e -> e.ratio > LEAST_RATIO && e.gain > SEATING_LIMIT && !named.contains(e.unit))
        .forEach(e -> doubts.add(seating(study, e)));
    return doubts;
  }

  private static Doubt unit(Exchange found) {
    String limit = Numbers.fixed(limit(found.units), 1);
    String size = Numbers.against(found.gain, limit(found.units), 1);
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

  private static Doubt seating(Study study, Exchange found) {
    String fixture = (found.onNew ? study.to() : study.from()).name();
    List<CaptureEntry> rows =
        study.captures().stream()
            .filter(
                c ->
                    c.unit().equals(found.unit)
                        && c.fixture().equals(fixture)
                        && !c.excludedByLab())
            .toList();
    int number =
        rows.stream()
            .map(CaptureEntry::seating)
            .distinct()
            .sorted()
            .skip(found.seating)
            .findFirst()
            .orElseThrow();
    String file =
        rows.stream()
            .filter(c -> c.seating() == number)
            .map(CaptureEntry::file)
            .findFirst()
            .orElseThrow();
    String size = Numbers.against(found.gain, SEATING_LIMIT, 1);
    String limit = Numbers.fixed(SEATING_LIMIT, 1);
    return new Doubt(
        Doubt.Subject.CAPTURE,
        found.unit,
        fixture,
        file,
        DOUBT,
        size + " variances",
        limit + " variances",
        "seating %d is nearer to the unit's seatings on the other fixture than to those here, by %s variances between seatings (doubted from %s on): it is entered under the wrong fixture."
            .formatted(number, size, limit),
        "",
        "Correct the fixture of its rows in the table of captures.",
        "");
  }
}
