package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.internal.Numbers;
import org.twinrig.study.PairedUnits;

/**
 * Whether two units of a kind are one: left and right of one specimen, or a copy.
 *
 * <p>Of every pair {@code q = ½(ln Q_o + ln Q_d)}, where {@code Q_o} is the mean over bands of
 * {@code (o_A - o_B)²/s_o²}, of levels on the old fixture, and {@code Q_d} the same of differences
 * between the fixtures; {@code s²} the kind's variance, averaged over a third of an octave to
 * either side. A pair is doubted where {@code q} lies more standard deviations below the mean of
 * the kind's pairs than the limit, both taken without pairs of the two units: {@code 4 + 12/(n -
 * 3)}, set so that about 2 % of clean studies of three kinds have a pair below it, by 30 studies
 * for each of two designs (6 units seated once, 12 three times) of the impedance simulator on two
 * pairs of heads and of the curve simulator with other kinds. Our choice; no source.
 *
 * <p>It cannot find sides that are built as differently as two specimens.
 */
public final class OneUnitTwice {
  /** The doubt as files name it. */
  public static final String DOUBT = "one unit twice";

  /** Of so many, six pairs are left without the two. */
  private static final int FEWEST_UNITS = 6;

  /**
   * A pair that is nearer to each other than others of its kind.
   *
   * @param below by how many standard deviations of the other pairs
   * @param share of the other pairs' distance, as levels
   */
  public record Pair(String one, String other, int units, double below, double share) {}

  private OneUnitTwice() {}

  static double limit(int units) {
    return 4.0 + 12.0 / (units - 3);
  }

  /** All pairs of a kind, whatever the limit. */
  public static List<Pair> pairs(PairedUnits kind) {
    int n = kind.units().size();
    if (n < FEWEST_UNITS) {
      return List.of();
    }
    KindCurves curves = new KindCurves(kind);
    double[] oldVariance = curves.old.variance();
    double[] variance = curves.difference.variance();
    double[][] q = new double[n][n];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < a; b++) {
        double old =
            KindCurves.distance(
                KindCurves.minus(curves.old.curves[a], curves.old.curves[b]), oldVariance);
        double difference =
            KindCurves.distance(
                KindCurves.minus(curves.difference.curves[a], curves.difference.curves[b]),
                variance);
        q[a][b] = (Math.log(Math.max(1e-9, old)) + Math.log(Math.max(1e-9, difference))) / 2;
        q[b][a] = q[a][b];
      }
    }
    List<Pair> pairs = new ArrayList<>();
    for (int a = 0; a < n; a++) {
      for (int b = a + 1; b < n; b++) {
        double[] others = others(q, a, b);
        double mean = StatUtils.mean(others);
        double below = (mean - q[a][b]) / Math.sqrt(StatUtils.variance(others));
        if (Double.isFinite(below)) {
          pairs.add(
              new Pair(
                  kind.units().get(a),
                  kind.units().get(b),
                  n,
                  below,
                  Math.exp((q[a][b] - mean) / 2)));
        }
      }
    }
    return pairs;
  }

  private static double[] others(double[][] q, int one, int other) {
    int n = q.length;
    double[] others = new double[(n - 2) * (n - 3) / 2];
    int count = 0;
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < a; b++) {
        if (a != one && a != other && b != one && b != other) {
          others[count++] = q[a][b];
        }
      }
    }
    return Arrays.copyOf(others, count);
  }

  /** A doubt for every pair that is too near. */
  public static List<Doubt> of(PairedUnits kind) {
    return pairs(kind).stream()
        .filter(p -> p.below > limit(p.units))
        .map(OneUnitTwice::doubt)
        .toList();
  }

  private static Doubt doubt(Pair pair) {
    String limit = Numbers.fixed(limit(pair.units), 1);
    String found = Numbers.against(pair.below, limit(pair.units), 1);
    return Doubt.open(
        Doubt.Subject.PAIR,
        pair.one + " / " + pair.other,
        "",
        DOUBT,
        new Doubt.Found(found + " standard deviations", limit + " standard deviations"),
        "on both fixtures they differ by %s %% of what other pairs of the kind do, %s standard deviations less (doubted from %s on): left and right of one specimen, or a copy."
            .formatted(Numbers.fixed(100 * pair.share, 0), found, limit),
        "One unit that counts as two makes intervals too narrow. Enter both sides under one name,"
            + " or leave the copy out.");
  }
}
