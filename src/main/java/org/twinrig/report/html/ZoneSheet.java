package org.twinrig.report.html;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.study.DeclaredZone;

/**
 * The zones of one kind: how often their edges are found again, how often bands keep their marks,
 * and why.
 */
public final class ZoneSheet {
  private ZoneSheet() {}

  /** Why a zone is marked, as clauses. */
  public static String why(Zone zone, List<DeclaredZone> declared) {
    return clauses(
        zone,
        "the prediction interval is within the reliable tolerance",
        r -> r == Reason.DECLARED_ZONE ? "the lab declared: " + names(zone, declared) : r.plain());
  }

  /** What is said of a zone, its notes last; what is so where no reason lowers its mark, first. */
  static String clauses(Zone zone, String reliable, Function<Reason, String> words) {
    boolean lowered = zone.reasons().stream().anyMatch(r -> !r.note());
    return Stream.concat(
            lowered ? Stream.empty() : Stream.of(reliable), zone.reasons().stream().map(words))
        .collect(Collectors.joining("; "));
  }

  /** The declared zones that reach into a zone. */
  public static String names(Zone zone, List<DeclaredZone> declared) {
    return declared.stream()
        .filter(d -> d.fromHz() < zone.toHz() && d.toHz() > zone.fromHz())
        .map(DeclaredZone::name)
        .collect(Collectors.joining(", "));
  }

  /** The start of a zone, and how many of the redrawn studies have an edge there. */
  public static Cell place(double hz, List<ZoneEdge> edges) {
    return twoLines(
        Numbers.hertz(hz),
        edges.stream()
            .filter(e -> e.edgeHz() == hz)
            .findFirst()
            .map(e -> "in " + wholePercent(e.kept()) + " %"),
        hz);
  }

  /** Two texts of which each stays on one line. */
  private static Cell twoLines(String first, Optional<String> second, double order) {
    return Cell.ordered(
        unbroken(first) + second.map(s -> " (" + unbroken(s) + ")").orElse(""), order);
  }

  private static String unbroken(String text) {
    return text.replace(' ', '\u00a0');
  }

  /** The smallest and the mean share kept by the bands of a zone; empty without data. */
  public static Cell kept(Zone zone, KindOutcome kind) {
    List<MarkedBand> bands = kind.transfer().bands();
    DoubleSummaryStatistics kept =
        IntStream.range(0, bands.size())
            .filter(b -> inside(bands.get(b), zone))
            .mapToObj(b -> kind.stability().bands().get(b))
            .flatMap(Optional::stream)
            .mapToDouble(MarkStability.Shares::kept)
            .summaryStatistics();
    return kept.getCount() == 0
        ? Cell.without("")
        : twoLines(
            wholePercent(kept.getMin()),
            Optional.of("mean " + wholePercent(kept.getAverage())),
            kept.getMin());
  }

  private static boolean inside(MarkedBand band, Zone zone) {
    return band.band().midHz() > zone.fromHz() && band.band().midHz() < zone.toHz();
  }

  /** Rounded down, so that 100 says every draw. */
  private static String wholePercent(double share) {
    return Numbers.fixed(Math.floor(100 * share + 1e-9), 0);
  }
}
