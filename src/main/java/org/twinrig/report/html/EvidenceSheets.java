package org.twinrig.report.html;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.report.figure.RankFigure;
import org.twinrig.report.html.Sheet.Cell;

/** Tables of a study's report that say whether it supports its use. */
public final class EvidenceSheets {
  private EvidenceSheets() {}

  /** The unit of a kind that was missed most, by region. */
  public static List<PredictionErrors> missedMost(KindOutcome kind) {
    Validation leftOut = kind.evidence().leftOut();
    return Stream.of(Region.values()).flatMap(r -> leftOut.worst(Optional.of(r)).stream()).toList();
  }

  /** Stated against reached coverage, one row per kind and way of leaving units out. */
  public static List<Sheet.Row<List<Coverage>>> coverage(StudyOutcome outcome) {
    return outcome.kinds().stream().flatMap(EvidenceSheets::coverage).toList();
  }

  private static Stream<Sheet.Row<List<Coverage>>> coverage(KindOutcome kind) {
    return Stream.of(
            new Sheet.Row<>(kind.kind(), kind.evidence().leftOut().coverage(Optional.empty())),
            new Sheet.Row<>(
                kind.kind() + ", held out", kind.evidence().heldOut().coverage(Optional.empty())))
        .filter(c -> !c.of().isEmpty());
  }

  /** A share that was reached, with its interval. */
  public static Cell reached(Coverage c) {
    return Cell.ordered(
        Texts.percent(c.reached()) + Texts.range(Texts.percent(c.low()), Texts.percent(c.high())),
        c.reached());
  }

  /** A coefficient with its interval; one without an order comes before all. */
  public static Cell coefficient(Optional<RankCorrelation> found) {
    return found
        .map(
            r ->
                Cell.ordered(
                    r.interval()
                        .map(i -> Texts.ranged(r.coefficient(), i.low(), i.high()))
                        .orElse(Numbers.fixed(r.coefficient(), 2)),
                    r.coefficient()))
        .orElse(Cell.ordered("no order", -2));
  }

  /** From which rank to which units went. */
  public static String changes(List<RankKeeping.Ranked> units) {
    return units.isEmpty()
        ? "none changes"
        : units.stream()
            .map(u -> u.unit() + " from " + RankFigure.rank(u.rankFrom()) + " to " + RankFigure.rank(u.rankTo()))
            .collect(Collectors.joining("; "));
  }

  /** What the units of a kind share, from the difference that makes none on. */
  public static List<FixtureFeature> features(KindOutcome kind, double leastDb) {
    return kind.evidence().features().all().stream()
        .filter(f -> Math.abs(f.height().value()) >= leastDb)
        .toList();
  }

  public static Cell centre(FixtureFeature.Estimate c) {
    return Cell.ordered(
        Numbers.hertz(c.value()) + Texts.range(Numbers.hertz(c.low()), Numbers.hertz(c.high())),
        c.value());
  }

  public static Cell height(FixtureFeature f) {
    double db = f.height().value();
    double half = f.simultaneousHalfDb();
    return Cell.ordered(Texts.ranged(db, db - half, db + half), Math.abs(db));
  }

  public static Cell width(Optional<FixtureFeature.Estimate> width) {
    return width
        .map(w -> Cell.ordered(Texts.ranged(w.value(), w.low(), w.high()), w.value()))
        .orElse(Cell.without("not bounded"));
  }
}
