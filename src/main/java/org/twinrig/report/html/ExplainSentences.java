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
import org.twinrig.report.figure.DifferenceGraphs;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.ExampleGraph;
import org.twinrig.report.figure.Stretch;
import org.twinrig.translation.TranslatedGraph;

/** The findings that head the sections of the page for readers. */
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

  /** What the strips of all kinds say together; kinds that were never measured on both count. */
  public static String map(StudyOutcome outcome) {
    List<List<Stretch>> partly =
        strips(outcome).stream()
            .filter(k -> k.stream().anyMatch(s -> s.is(Mark.RELIABLE) || s.is(Mark.CAUTION)))
            .toList();
    if (partly.isEmpty()) {
      return "Old and new graphs cannot be compared anywhere yet";
    }
    int kinds = outcome.kinds().size() + ExplainPage.unmeasured(outcome).size();
    int lost = kinds - partly.size();
    String besides =
        lost == 0
            ? ""
            : "; besides, "
                + Numbers.count(lost, "kind", "kinds")
                + " of "
                + kinds
                + " cannot be compared at all";
    List<Stretch> hatched = all(Mark.UNRELIABLE, partly);
    if (!hatched.isEmpty()) {
      return "Old and new graphs cannot be compared in the hatched zones, "
          + where(hatched)
          + besides;
    }
    return all(Mark.CAUTION, partly).isEmpty()
        ? "Old and new graphs can be compared wherever they were measured" + besides
        : "Old and new graphs can be compared, in places with care" + besides;
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

  /** How far the fixtures differ at most on average; of several kinds alike the first is named. */
  public static String difference(List<KindOutcome> drawn) {
    Comparator<DifferenceGraphs.Mean> byReach = Comparator.comparingDouble(m -> Math.abs(m.db()));
    Optional<DifferenceGraphs.Mean> farthest =
        drawn.stream()
            .map(ExplainSentences::largest)
            .reduce((a, b) -> byReach.compare(b, a) > 0 ? b : a);
    if (farthest.isEmpty()) {
      return "How far the fixtures differ is not known yet";
    }
    return isNothing(farthest.get())
        ? "On average, the fixtures agree"
        : "On average, the fixtures differ by up to " + size(farthest.get()) + near(farthest.get());
  }

  /** How far they differ for one kind. */
  public static String finding(KindOutcome kind) {
    DifferenceGraphs.Mean mean = largest(kind);
    return isNothing(mean)
        ? "No difference on average."
        : "At most " + size(mean) + (mean.db() > 0 ? " more" : " less") + near(mean) + ".";
  }

  private static DifferenceGraphs.Mean largest(KindOutcome kind) {
    return DifferenceGraphs.largest(kind.transfer()).orElseThrow();
  }

  private static boolean isNothing(DifferenceGraphs.Mean mean) {
    return Math.abs(mean.db()) < NOTHING_DB;
  }

  private static String size(DifferenceGraphs.Mean mean) {
    return Numbers.fixed(Math.abs(mean.db()), 1) + " dB";
  }

  private static String near(DifferenceGraphs.Mean mean) {
    return ", near " + PlainRange.hertz(mean.band().midHz());
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

  /** How many dB of an example are as long as a tenfold step in frequency. */
  public static String scale(TranslatedGraph example) {
    return Numbers.fixed(new ExampleGraph(example).dbPerDecade(), 0);
  }

  /** A share in hundredths, never rounded up to all. */
  public static String hundredths(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString();
  }
}
