package org.twinrig.report.html;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Unit;
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

  private ExplainPage() {}

  /**
   * One self-contained page.
   *
   * @param example one old graph re-expressed, at least one band of which has a level; nothing when
   *     there is none to show
   */
  public static String html(StudyOutcome outcome, Optional<TranslatedGraph> example) {
    String page =
        Page.fill("explain.jte", Map.of("outcome", outcome, "example", example)).stripTrailing();
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
        .filter(r -> r != Reason.NO_DATA)
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
                ExplainSentences.reasons(zone, outcome.study().settings().zones())));
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
  public static TrustedMarkup difference(KindOutcome kind, List<KindOutcome> drawn) {
    return TrustedMarkup.of(
        new DifferenceGraphs(drawn.stream().map(KindOutcome::transfer).toList())
            .svg(kind.transfer(), kind.zones()));
  }

  public static TrustedMarkup example(TranslatedGraph graph) {
    return TrustedMarkup.of(GraphFigure.example(graph));
  }
}
