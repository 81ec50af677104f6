package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Study;

/**
 * Whether two units changed places on one fixture.
 *
 * <p>Asked of every pair, of one kind or of two: {@code r = (Q_k(n_A - o_A - m_k) + Q_l(n_B - o_B -
 * m_l)) / (Q_k(n_B - o_A - m_k) + Q_l(n_A - o_B - m_l))}, what the units depart by as they stand
 * against what they would, exchanged on the new fixture; {@code o} and {@code n} are pinned levels
 * on the old and the new one, {@code m_k} the kind's mean difference without the two, {@code Q_k}
 * the mean over bands of squares divided by the kind's variance without the two, averaged over a
 * third of an octave to either side. Exchanging them on the old fixture is asked likewise: within a
 * kind it gives the same, so only the pair is told; between kinds the better one names the fixture.
 *
 * <p>A unit is named in one pair, the most certain. The limit, {@code 1.8 + 2/(n - 3)}, was set by
 * 30 studies of three kinds for each of three designs (6 units seated once, 12 three times) of the
 * impedance simulator on two pairs of heads and of the curve simulator with other kinds: in one of
 * 200 clean studies the largest ratio was above 1.4; it was raised from {@code 1.5 + 1.5/(n - 3)}
 * afterwards, on further such studies, for all checks of units together. Statistic and limit are
 * our choice; no source.
 *
 * <p>It cannot find two units that are alike, nor three that changed places in a ring.
 */
public final class UnitsExchanged {
  /** The doubt as files name it. */
  public static final String DOUBT = "units exchanged";

  /** Without the two, a variance needs two or more. */
  private static final int FEWEST_UNITS = 5;

  /** By so much one fixture must explain better than the other to be named. */
  private static final double TOLD = 1.3;

  /**
   * A pair that would fit better exchanged.
   *
   * @param units of the smaller of their kinds
   * @param onNew how much better on the new fixture
   * @param onOld how much better on the old one
   */
  public record Exchange(
      String one, String other, int units, boolean sameKind, double onNew, double onOld) {
    /** How many times as far from their kinds the two are as they would be exchanged. */
    public double ratio() {
      return Math.max(onNew, onOld);
    }
  }

  private UnitsExchanged() {}

  /** How many times better an exchange must fit. */
  static double limit(int units) {
    return 1.8 + 2.0 / (units - 3);
  }

  /** The best exchange of every pair of kinds, whatever its limit. */
  public static List<Exchange> exchanges(List<PairedUnits> kinds) {
    List<KindCurves> curves =
        kinds.stream().filter(k -> k.units().size() >= FEWEST_UNITS).map(KindCurves::new).toList();
    List<Exchange> all = new ArrayList<>();
    for (int k = 0; k < curves.size(); k++) {
      for (int l = k; l < curves.size(); l++) {
        all.addAll(between(curves.get(k), curves.get(l)));
      }
    }
    return all;
  }

  private static List<Exchange> between(KindCurves one, KindCurves other) {
    boolean same = one == other;
    List<Judge> without = same ? List.of() : leftOut(one);
    List<Judge> withoutOther = same ? List.of() : leftOut(other);
    List<Exchange> pairs = new ArrayList<>();
    for (int a = 0; a < one.size(); a++) {
      for (int b = same ? a + 1 : 0; b < other.size(); b++) {
        Judge first = same ? new Judge(one, a, b) : without.get(a);
        Judge second = same ? first : withoutOther.get(b);
        double[] oldA = one.old.curves[a];
        double[] oldB = other.old.curves[b];
        double[] newA = one.now(a);
        double[] newB = other.now(b);
        double kept = first.away(oldA, newA) + second.away(oldB, newB);
        double onNew = kept / (first.away(oldA, newB) + second.away(oldB, newA));
        double onOld = same ? onNew : kept / (first.away(oldB, newA) + second.away(oldA, newB));
        if (Double.isFinite(onNew) && Double.isFinite(onOld)) {
          pairs.add(
              new Exchange(
                  one.paired.units().get(a),
                  other.paired.units().get(b),
                  Math.min(one.size(), other.size()),
                  same,
                  onNew,
                  onOld));
        }
      }
    }
    return pairs;
  }

  private static List<Judge> leftOut(KindCurves kind) {
    return IntStream.range(0, kind.size()).mapToObj(u -> new Judge(kind, u)).toList();
  }

  /** What a kind without some units says of a unit. */
  private static final class Judge {
    private final double[] mean;
    private final double[] variance;

    Judge(KindCurves kind, int... without) {
      mean = kind.difference.mean(without);
      variance = kind.difference.variance(without);
    }

    double away(double[] old, double[] now) {
      return KindCurves.distance(KindCurves.minus(KindCurves.minus(now, old), mean), variance);
    }
  }

  /** A doubt for every pair that would fit better exchanged. */
  public static List<Doubt> of(Study study, List<PairedUnits> kinds) {
    Set<String> named = new HashSet<>();
    List<Doubt> doubts = new ArrayList<>();
    exchanges(kinds).stream()
        .filter(e -> e.ratio() > limit(e.units))
        .sorted(Comparator.comparingDouble(Exchange::ratio).reversed())
        .forEach(
            e -> {
              if (!named.contains(e.one) && !named.contains(e.other)) {
                named.add(e.one);
                named.add(e.other);
                doubts.add(doubt(study, e, limit(e.units)));
              }
            });
    return doubts;
  }

  private static Doubt doubt(Study study, Exchange pair, double limit) {
    boolean told = Math.max(pair.onNew, pair.onOld) > TOLD * Math.min(pair.onNew, pair.onOld);
    boolean onNew = pair.onNew > pair.onOld;
    String fixture = !told ? "" : onNew ? study.to().name() : study.from().name();
    String where =
        !told ? "on one fixture" : "on " + (onNew ? study.to().label() : study.from().label());
    String found = Numbers.against(pair.ratio(), limit, 1);
    return Doubt.open(
        Doubt.Subject.PAIR,
        pair.one + " / " + pair.other,
        fixture,
        DOUBT,
        new Doubt.Found(found + " times", Numbers.fixed(limit, 1) + " times"),
        "as they stand they depart from their %s %s times as far as exchanged %s (doubted from %s times on): two units changed places%s."
            .formatted(
                pair.sameKind ? "kind" : "kinds",
                found,
                where,
                Numbers.fixed(limit, 1),
                told ? "" : ", on which fixture the differences cannot tell"),
        "Their differences widen the intervals of their kind. Compare both with their captures on"
            + " the other fixture, and exchange the names of the files that are wrong.");
  }
}
