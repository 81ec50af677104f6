package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.StudentT;
import org.twinrig.study.PairedUnits;

/**
 * Whether a unit is entered under the wrong kind.
 *
 * <p>A unit's levels on the old fixture and its differences between the fixtures, averaged over a
 * third of an octave, are held against every kind, left out of its own, by {@link KindLikelihood}:
 * {@code l = log L_own - log L_other}. It is doubted where another kind is likelier, and {@code l}
 * lies further below what the other units of its kind give than Student's t allows at a level of
 * 0.5 % over all units of the study ({@code n - 2} degrees of freedom). Level and shrinkage are our
 * choice, made on the impedance simulator with two pairs of heads and on the curve simulator with
 * other kinds.
 *
 * <p>It cannot tell kinds that are built alike.
 */
public final class KindDoubtful {
  /** The doubt as files name it. */
  public static final String DOUBT = "kind doubtful";

  private static final int FEWEST_UNITS = 5;
  private static final double LEVEL = 0.005;
  private static final KindLikelihood.Shrinkage SHRINKAGE =
      new KindLikelihood.Shrinkage(0.35, 2, 0.3);

  /**
   * A unit held against its own and the likeliest other kind.
   *
   * @param ratio {@code l}
   * @param below by how many standard deviations it lies below the other units of its kind
   * @param limit that this exceeds where it is doubted
   */
  public record Held(
      String unit, String kind, String other, double ratio, double below, double limit) {
    boolean doubted() {
      return ratio < 0 && below > limit;
    }

    private Doubt doubt() {
      String most = Numbers.fixed(limit, 1);
      String found = Numbers.against(below, limit, 1);
      return Doubt.open(
          Doubt.Subject.UNIT,
          unit,
          "",
          KindDoubtful.DOUBT,
          new Doubt.Found(found + " standard deviations", most + " standard deviations"),
          "its captures fit the kind `%s` better than `%s`, and lie %s standard deviations from how the other units of its kind fit (doubted from %s on): it is entered under the wrong kind."
              .formatted(other, kind, found, most),
          "It moves its kind's mean and widens its intervals. Correct its kind in the table of"
              + " units; if it is of this kind, confirm it.");
    }
  }

  private KindDoubtful() {}

  /** A doubt for every unit that fits another kind. */
  public static List<Doubt> of(List<PairedUnits> kinds) {
    return held(kinds).stream().filter(Held::doubted).map(Held::doubt).toList();
  }

  /** Every unit of kinds that can be judged, doubted or not. */
  public static List<Held> held(List<PairedUnits> kinds) {
    List<PairedUnits> judged =
        kinds.stream().filter(k -> k.units().size() >= FEWEST_UNITS).toList();
    List<double[][]> features = features(judged);
    if (judged.size() < 2 || features.get(0)[0].length == 0) {
      return List.of();
    }
    int all = judged.stream().mapToInt(k -> k.units().size()).sum();
    List<Held> held = new ArrayList<>();
    for (int k = 0; k < judged.size(); k++) {
      held.addAll(held(judged, features, k, all));
    }
    return held;
  }

  private static List<Held> held(
      List<PairedUnits> kinds, List<double[][]> features, int own, int all) {
    PairedUnits kind = kinds.get(own);
    int n = kind.units().size();
    double[] ratios = new double[n];
    int[] likeliest = new int[n];
    for (int u = 0; u < n; u++) {
      double[] unit = features.get(own)[u];
      List<double[][]> rest = new ArrayList<>(features);
      rest.set(own, Contest.without(features.get(own), u));
      var inverse = KindLikelihood.solver(KindLikelihood.pooled(rest, SHRINKAGE));
      double[] log =
          rest.stream().mapToDouble(g -> KindLikelihood.of(g, inverse).log(unit)).toArray();
      int best = own == 0 ? 1 : 0;
      for (int k = 0; k < log.length; k++) {
        best = k != own && log[k] > log[best] ? k : best;
      }
      ratios[u] = log[own] - log[best];
      likeliest[u] = best;
    }
    double limit = StudentT.oneSided(1 - LEVEL / all, n - 2.0);
    return IntStream.range(0, n)
        .mapToObj(
            u -> {
              double[] others =
                  IntStream.range(0, n).filter(i -> i != u).mapToDouble(i -> ratios[i]).toArray();
              double below =
                  (StatUtils.mean(others) - ratios[u])
                      / Math.sqrt(StatUtils.variance(others) * (1 + 1.0 / others.length));
              return new Held(
                  kind.units().get(u),
                  kind.kind(),
                  kinds.get(likeliest[u]).kind(),
                  ratios[u],
                  below,
                  limit);
            })
        .toList();
  }

  /** By kind and unit: levels and differences by thirds of an octave that every unit has. */
  private static List<double[][]> features(List<PairedUnits> kinds) {
    if (kinds.isEmpty()) {
      return List.of();
    }
    int step = Math.max(1, kinds.get(0).grid().perOctave() / 3);
    int thirds = kinds.get(0).grid().size() / step;
    List<double[][]> all = new ArrayList<>();
    boolean[] missing = new boolean[2 * thirds];
    for (PairedUnits kind : kinds) {
      KindCurves curves = new KindCurves(kind);
      double[][] units = new double[curves.size()][2 * thirds];
      for (int u = 0; u < units.length; u++) {
        for (int t = 0; t < thirds; t++) {
          units[u][t] = mean(curves.old.curves[u], t * step, step);
          units[u][thirds + t] = mean(curves.difference.curves[u], t * step, step);
        }
        for (int i = 0; i < missing.length; i++) {
          missing[i] |= Double.isNaN(units[u][i]);
        }
      }
      all.add(units);
    }
    int[] kept = IntStream.range(0, missing.length).filter(i -> !missing[i]).toArray();
    return all.stream()
        .map(
            g ->
                Arrays.stream(g)
                    .map(u -> IntStream.of(kept).mapToDouble(i -> u[i]).toArray())
                    .toArray(double[][]::new))
        .toList();
  }

  private static double mean(double[] curve, int from, int count) {
    return Arrays.stream(curve, from, from + count).average().orElseThrow();
  }
}
