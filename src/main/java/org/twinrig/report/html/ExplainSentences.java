package org.twinrig.report.html;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.DifferenceGraphs;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.Stretch;
import org.twinrig.study.DbLimit;
import org.twinrig.study.DeclaredZone;

/** What the page for readers words by rules: the findings that head its sections, and reasons. */
public final class ExplainSentences {
  /** Below this a mean difference rounds to nothing. */
  private static final double NOTHING_DB = 0.05;

  private ExplainSentences() {}

  /** Whether any zone of any kind carries a mark. */
  public static boolean any(Mark mark, StudyOutcome outcome) {
    return !all(mark, strips(outcome)).isEmpty();
  }

  private static List<List<Stretch>> strips(StudyOutcome outcome) {
    return outcome.kinds().stream().map(k -> Stretch.ofZones(k.zones())).toList();
  }

  private static List<Stretch> all(Mark mark, List<List<Stretch>> kinds) {
    return kinds.stream().flatMap(List::stream).filter(s -> s.is(mark)).toList();
  }

  public static long partly(StudyOutcome outcome) {
    return strips(outcome).stream().filter(ExplainSentences::partly).count();
  }

  private static boolean partly(List<Stretch> kind) {
    return kind.stream().anyMatch(s -> s.is(Mark.RELIABLE) || s.is(Mark.CAUTION));
  }

  /** Where kinds cannot be compared that can be compared elsewhere; empty where there is none. */
  public static String hatched(StudyOutcome outcome) {
    List<Stretch> hatched =
        all(Mark.UNRELIABLE, strips(outcome).stream().filter(ExplainSentences::partly).toList());
    return hatched.isEmpty() ? "" : where(hatched);
  }

  /** The region that holds more than half of the hatching, or all that hold some. */
  private static String where(List<Stretch> hatched) {
    double sum = Stream.of(EverydayRegion.values()).mapToDouble(r -> octaves(r, hatched)).sum();
    List<String> some = new ArrayList<>();
    for (EverydayRegion region : EverydayRegion.values()) {
      double part = octaves(region, hatched);
      if (part >= sum - 1e-9) {
        return "in the " + region.word();
      }
      if (part > 0.5 * sum + 1e-9) {
        return "mostly in the " + region.word();
      }
      if (part > 0) {
        some.add(region.word());
      }
    }
    return "in the " + Texts.joined(some);
  }

  private static double octaves(EverydayRegion region, List<Stretch> stretches) {
    return stretches.stream().mapToDouble(region::octavesOf).sum();
  }

  /** The mean difference that is farthest from 0; of several kinds alike that of the first. */
  public static Optional<DifferenceGraphs.Mean> farthest(List<KindOutcome> drawn) {
    Comparator<DifferenceGraphs.Mean> byReach = Comparator.comparingDouble(m -> Math.abs(m.db()));
    return drawn.stream()
        .flatMap(k -> DifferenceGraphs.largest(k.transfer()).stream())
        .reduce((a, b) -> byReach.compare(b, a) > 0 ? b : a);
  }

  /** How far it is, and where; empty where it rounds to nothing. */
  public static String size(DifferenceGraphs.Mean mean, String sense) {
    return Math.abs(mean.db()) < NOTHING_DB
        ? ""
        : Numbers.fixed(Math.abs(mean.db()), 1)
            + " dB"
            + sense
            + ", near "
            + PlainRange.hertz(mean.band().midHz());
  }

  /** Where an example is best. */
  public static String example(List<Stretch> stretches) {
    Optional<Stretch> best =
        stretches.stream()
            .filter(s -> s.is(Mark.RELIABLE))
            .max(Comparator.comparingDouble(s -> s.octavesInside(s.fromHz(), s.toHz())));
    if (best.isPresent()) {
      return "An old graph, re-expressed: best " + new PlainRange(stretches).of(best.get());
    }
    return stretches.stream().anyMatch(s -> s.is(Mark.CAUTION))
        ? "An old graph, re-expressed: to be compared with care only"
        : "An old graph, re-expressed: not to be compared anywhere";
  }

  /** A reason as a clause for readers who do not measure. */
  public static String reason(Reason reason) {
    return switch (reason) {
      case NO_DATA -> "nothing was measured here";
      case FEW_UNITS -> "too few headphones of this kind were measured on both fixtures";
      case WIDE_PREDICTION -> "the old graph does not tell closely enough what the new one shows";
      case SEATING_SCATTER -> "the level changes each time the headphone is put on";
      case UNITS_DISAGREE -> "the change is not the same for every headphone of the kind";
      case OUTSIDE_USABLE_RANGE -> "a fixture cannot be relied on in this zone";
      case ADAPTIVE -> "the headphone adapts to what it is worn on";
      case NOT_EAR_LIKE -> "a fixture is not made to be like a human ear in this zone";
      case DECLARED_ZONE -> "the lab knows this zone to be doubtful";
      case RESONANCE_WANDERS -> "a peak or dip sits at another place on the new fixture";
      case KIND_NOT_IN_THE_STUDY -> "the lab measured no headphone of this kind on both fixtures";
      case OUTSIDE_THE_STUDY -> "the lab measured no headphone like this one on both fixtures";
      case COARSE_POINTS -> "the curves have few points here";
      case NO_SCATTER -> "all headphones look the same here, which real ones never do";
      case SMOOTHED_MORE -> "the old graph shows less detail than the measurements";
    };
  }

  static String reasons(Zone zone, List<DeclaredZone> declared) {
    List<String> clauses =
        zone.reasons().stream()
            .map(
                r ->
                    r == Reason.DECLARED_ZONE
                        ? reason(r) + inBrackets(ZoneSheet.names(zone, declared))
                        : reason(r))
            .toList();
    return clauses.isEmpty()
        ? "the old graph tells closely enough what the new one shows"
        : String.join("; ", clauses);
  }

  private static String inBrackets(String names) {
    return names.isEmpty() ? "" : " (" + names + ")";
  }

  /** The most that a limit allows at any frequency, dB. */
  public static String most(DbLimit limit) {
    return Numbers.fixed(
        limit.steps().stream().mapToDouble(DbLimit.Step::db).max().orElseThrow(), 1);
  }

  /** A share in hundredths, never rounded up to all. */
  public static String hundredths(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString();
  }
}
