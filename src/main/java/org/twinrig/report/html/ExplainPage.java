package org.twinrig.report.html;

import java.math.BigDecimal;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Sha256;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.DifferenceGraphs;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.figure.MarkStrip;
import org.twinrig.report.figure.Stretch;
import org.twinrig.report.table.PlainZones;
import org.twinrig.response.Anchor;
import org.twinrig.study.DbLimit;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Study;
import org.twinrig.translation.TranslatedGraph;

/**
 * The page for the lab's own readers: what changed, and what may be compared where; with its
 * drawings.
 */
public final class ExplainPage {
  /** How the first line of the page begins. */
  static final String FIRST_LINE =
      "<!DOCTYPE html><html lang=\"en\" data-page=\"twinrig explain\">";

  /** The last line: the SHA-256 of all above, so that a page someone has changed is known. */
  private static final Pattern LAST_LINE = Pattern.compile("<!-- sha256 ([0-9a-f]{64}) -->\n");

  /** Below this a mean difference rounds to nothing. */
  private static final double NOTHING_DB = 0.05;

  private ExplainPage() {}

  /**
   * One self-contained page.
   *
   * @param example one old graph re-expressed, at least one band of which has a level; nothing when
   *     there is none to show
   * @param heldBack how many graphs are to be checked before they are published
   */
  public static String html(StudyOutcome outcome, Optional<TranslatedGraph> example, int heldBack) {
    String page =
        Page.fill(
                "explain.jte", Map.of("outcome", outcome, "example", example, "heldBack", heldBack))
            .stripTrailing();
    return page + "\n<!-- sha256 " + sha256(page + "\n") + " -->\n";
  }

  /** Whether this program wrote a page, and nobody changed it since: its last line says so. */
  public static boolean isAsWritten(String page) {
    int end = page.lastIndexOf("<!-- sha256 ");
    if (end < 0 || !page.startsWith(FIRST_LINE)) {
      return false;
    }
    Matcher last = LAST_LINE.matcher(page.substring(end));
    return last.matches() && last.group(1).equals(sha256(page.substring(0, end)));
  }

  private static String sha256(String text) {
    return Sha256.hex(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Where all fixtures that say so are made to be like a human ear; nothing where none does. */
  public static Optional<String> earLike(Study study) {
    List<FrequencyRange> ranges =
        Stream.of(study.from(), study.to()).flatMap(f -> f.simulates().stream()).toList();
    double fromHz = ranges.stream().mapToDouble(FrequencyRange::fromHz).max().orElse(0);
    double toHz = ranges.stream().mapToDouble(FrequencyRange::toHz).min().orElse(0);
    return fromHz < toHz ? Optional.of(Texts.range(fromHz, toHz)) : Optional.empty();
  }

  /** Kinds the lab has units of, but none with captures on both fixtures that count. */
  public static List<String> unmeasured(StudyOutcome outcome) {
    Set<String> measured =
        outcome.kinds().stream().map(KindOutcome::kind).collect(Collectors.toSet());
    return outcome.study().units().stream()
        .filter(u -> u.role() == Unit.Role.FIT)
        .map(Unit::kind)
        .distinct()
        .filter(k -> !measured.contains(k))
        .toList();
  }

  /** Whether something claimed of the study is contradicted, and the lab has not answered. */
  public static boolean checking(StudyOutcome outcome) {
    return outcome.doubts().stream().anyMatch(Doubt::isOpen);
  }

  /** Whether any kind has enough units for a graph of it to be shown. */
  public static boolean anyEnough(StudyOutcome outcome) {
    return outcome.kinds().stream().anyMatch(k -> enough(k, outcome));
  }

  /** Kinds with enough units for their mean difference to be drawn. */
  public static List<KindOutcome> drawn(StudyOutcome outcome) {
    return outcome.kinds().stream()
        .filter(k -> enough(k, outcome) && DifferenceGraphs.largest(k.transfer()).isPresent())
        .toList();
  }

  public static List<String> notDrawn(StudyOutcome outcome) {
    List<KindOutcome> drawn = drawn(outcome);
    return outcome.kinds().stream().filter(k -> !drawn.contains(k)).map(KindOutcome::kind).toList();
  }

  private static boolean enough(KindOutcome kind, StudyOutcome outcome) {
    return kind.paired().units().size() >= outcome.study().settings().minUnits();
  }

  /**
   * Why zones are not free to compare; that there are too few headphones stands with their kind.
   */
  public static List<Reason> reasons(StudyOutcome outcome) {
    return outcome.kinds().stream()
        .filter(k -> enough(k, outcome))
        .flatMap(k -> k.zones().stream())
        .filter(z -> !z.empty())
        .flatMap(z -> z.reasons().stream())
        .filter(r -> r != Reason.NO_DATA && !r.note())
        .distinct()
        .sorted()
        .toList();
  }

  /**
   * All zones as a table to take away, percent-encoded for a data link (RFC 2397; RFC 3986, 2.1: a
   * form's plus for a blank is not that).
   */
  public static String tableLink(StudyOutcome outcome) {
    List<PlainZones.Row> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (Zone zone : kind.zones()) {
        rows.add(
            new PlainZones.Row(
                kind.kind(),
                zone.fromHz(),
                zone.toHz(),
                Swatch.of(zone).word(),
                zone.empty() ? "nothing to compare" : advice(zone.mark()),
                ExplainPage.reasons(zone, outcome.study().settings().zones())));
      }
    }
    return URLEncoder.encode(PlainZones.RESULT.csv(rows), StandardCharsets.UTF_8)
        .replace("+", "%20");
  }

  private static String advice(Mark mark) {
    return switch (mark) {
      case RELIABLE -> "compare";
      case CAUTION -> "take care";
      case UNRELIABLE -> "do not compare";
    };
  }

  /** Marks along the axis, {@code height} pixels high. */
  public static TrustedMarkup strip(List<Stretch> stretches, int height) {
    return TrustedMarkup.of(MarkStrip.svg(stretches, height));
  }

  public static TrustedMarkup axisWithRegions() {
    return TrustedMarkup.of(EverydayRegion.axis());
  }

  /** The mean difference of one of several kinds, all drawn to one scale. */
  public static TrustedMarkup difference(KindOutcome kind, List<KindOutcome> drawn, Anchor anchor) {
    return TrustedMarkup.of(
        new DifferenceGraphs(drawn.stream().map(KindOutcome::transfer).toList())
            .svg(kind.transfer(), kind.zones(), anchor));
  }

  public static TrustedMarkup example(TranslatedGraph graph, Anchor anchor) {
    return TrustedMarkup.of(GraphFigure.example(graph, anchor));
  }

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
    return strips(outcome).stream().filter(ExplainPage::partly).count();
  }

  private static boolean partly(List<Stretch> kind) {
    return kind.stream().anyMatch(s -> s.is(Mark.RELIABLE) || s.is(Mark.CAUTION));
  }

  /** Where kinds cannot be compared that can be compared elsewhere; empty where there is none. */
  public static String hatched(StudyOutcome outcome) {
    List<Stretch> hatched =
        all(Mark.UNRELIABLE, strips(outcome).stream().filter(ExplainPage::partly).toList());
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
      case NOT_EAR_LIKE ->
          "parts of this zone lie where a fixture is not made to be like a human ear";
      case DECLARED_ZONE -> "the lab knows this zone to be doubtful";
      case RESONANCE_WANDERS -> "a peak or dip sits at another place on the new fixture";
      case KIND_NOT_IN_THE_STUDY -> "the lab measured no headphone of this kind on both fixtures";
      case OUTSIDE_THE_STUDY -> "the lab measured no headphone like this one on both fixtures";
      case COARSE_POINTS -> "the curves have few points here";
      case NO_SCATTER -> "all headphones look the same here, which real ones never do";
      case SMOOTHED_MORE -> "the old graph shows less detail than the measurements";
      case BEST_SEAL -> "the old graph shows the headphone at its best fit only";
      case SMOOTHED_OTHERWISE -> "the old graph was smoothed in another way than the measurements";
    };
  }

  static String reasons(Zone zone, List<DeclaredZone> declared) {
    return ZoneSheet.clauses(
        zone,
        "the old graph tells closely enough what the new one shows",
        r ->
            r == Reason.DECLARED_ZONE
                ? reason(r) + inBrackets(ZoneSheet.names(zone, declared))
                : reason(r));
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
