package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.study.FrequencyRange;

/** Tables of a study's report that say whether it supports its use. */
public final class EvidenceSheets {
  private static final int NAMED = 3;

  private EvidenceSheets() {}

  /** Where the mean difference is shown to make none. */
  public static Sheet<?> equivalence(StudyOutcome outcome) {
    return Sheet.ofKinds(
            "Where the mean of old graphs needs no translation",
            outcome.kinds(),
            k -> List.of(k.evidence().equivalence()))
        .hundredths("Band by band (octaves)", e -> e.octaves(Equivalence.Verdict::alone))
        .hundredths("All at once (octaves)", e -> e.octaves(Equivalence.Verdict::together))
        .words("All at once, where", e -> places(e.runs()));
  }

  private static String places(List<FrequencyRange> runs) {
    return runs.isEmpty()
        ? "nowhere"
        : runs.stream()
            .map(r -> Texts.range(r.fromHz(), r.toHz()))
            .collect(Collectors.joining("; "));
  }

  /** Errors on units that did not enter: each unit of the study left out in turn. */
  public static Sheet<?> errors(StudyOutcome outcome) {
    return errors(
        Sheet.ofKinds("Errors on units that were left out", outcome.kinds(), KindOutcome::errors));
  }

  /** Errors on the units that the lab held out. */
  public static Sheet<?> heldOut(StudyOutcome outcome) {
    return errors(
        Sheet.ofKinds(
            "Errors on units that the lab held out",
            outcome.kinds(),
            k -> k.evidence().heldOut().regions()));
  }

  private static Sheet<?> errors(Sheet<PredictionErrors> sheet) {
    return sheet
        .names("Region", e -> wide(region(e)), e -> region(e).fromHz())
        .counts("Units", e -> e.units().size())
        .hundredths("Bias (dB)", PredictionErrors::biasDb)
        .hundredths("RMS error (dB)", PredictionErrors::rmsDb)
        .hundredths("RMS error of the plain mean (dB)", PredictionErrors::rmsOffsetDb)
        .numbers("Coverage (%)", e -> inside(e.inside()));
  }

  private static String wide(Region region) {
    return region.word() + ", " + Texts.range(region.fromHz(), region.toHz());
  }

  private static Cell inside(OptionalDouble share) {
    return share.isPresent()
        ? Cell.ordered(Texts.percent(share.getAsDouble()), share.getAsDouble())
        : Cell.without("too few units");
  }

  private static Region region(PredictionErrors errors) {
    return errors.region().orElseThrow();
  }

  /** The unit that was missed most, by kind and region. */
  public static Sheet<?> worst(StudyOutcome outcome) {
    return Sheet.ofKinds(
            "The unit that was missed most", outcome.kinds(), k -> worst(k.evidence().leftOut()))
        .regions(EvidenceSheets::region)
        .names("Unit", PredictionErrors::unit)
        .hundredths("RMS error (dB)", PredictionErrors::rmsDb)
        .hundredths("RMS error of the plain mean (dB)", PredictionErrors::rmsOffsetDb)
        .hundredths("Bias (dB)", PredictionErrors::biasDb)
        .numbers("Inside (%)", m -> inside(m.inside()));
  }

  private static List<PredictionErrors> worst(Validation leftOut) {
    return Stream.of(Region.values()).flatMap(r -> leftOut.worst(Optional.of(r)).stream()).toList();
  }

  /** Stated against reached, one row per kind and way of leaving units out. */
  public static Sheet<?> coverage(StudyOutcome outcome) {
    Sheet<List<Coverage>> sheet =
        Sheet.ofKinds(
                "Share of bands inside their interval, all bands (%)",
                outcome.kinds().stream().flatMap(EvidenceSheets::coverage).toList())
            .counts("Units", c -> c.get(0).units());
    for (int k = 0; k < Coverage.STATED.size(); k++) {
      int column = k;
      sheet =
          sheet.ranges(
              Texts.percent(Coverage.STATED.get(k)) + " % stated", c -> reached(c.get(column)));
    }
    return sheet;
  }

  private static Stream<Sheet.Row<List<Coverage>>> coverage(KindOutcome kind) {
    return Stream.of(
            new Sheet.Row<>(kind.kind(), kind.evidence().leftOut().coverage(Optional.empty())),
            new Sheet.Row<>(
                kind.kind() + ", held out", kind.evidence().heldOut().coverage(Optional.empty())))
        .filter(c -> !c.of().isEmpty());
  }

  private static Cell reached(Coverage c) {
    return Cell.ordered(
        Texts.percent(c.reached()) + Texts.range(Texts.percent(c.low()), Texts.percent(c.high())),
        c.reached());
  }

  /** Whether units keep their rank; without rows where there are no reference curves. */
  public static Sheet<?> ranks(StudyOutcome outcome) {
    return Sheet.ofKinds(
            "How far the order of units keeps",
            outcome.kinds(),
            k -> k.evidence().ranks().stream().toList())
        .counts("Units", r -> r.units().size())
        .ranges("Spearman", r -> coefficient(r.spearman()))
        .ranges("Kendall tau-b", r -> coefficient(r.kendall()))
        .words("Ranks that change most", r -> changes(r.mostChanged(NAMED)))
        .words("Not ranked", r -> notRanked(r.leftOut()));
  }

  private static Cell coefficient(Optional<RankCorrelation> found) {
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

  private static String changes(List<RankKeeping.Ranked> units) {
    return units.isEmpty()
        ? "none changes"
        : units.stream()
            .map(u -> u.unit() + " from " + rank(u.rankFrom()) + " to " + rank(u.rankTo()))
            .collect(Collectors.joining("; "));
  }

  private static String rank(double rank) {
    return Numbers.fixed(rank, rank == Math.rint(rank) ? 0 : 1);
  }

  private static String notRanked(List<String> units) {
    return units.isEmpty() ? "none" : String.join(", ", units) + ": a band is missing";
  }

  /** What the units of a kind share, from the difference that makes none on. */
  public static Sheet<?> features(StudyOutcome outcome) {
    double leastDb = outcome.study().settings().tolerance().equivalenceDb();
    return Sheet.ofKinds(
            "Features that units share",
            outcome.kinds(),
            k ->
                k.evidence().features().all().stream()
                    .filter(f -> Math.abs(f.height().value()) >= leastDb)
                    .toList())
        .names("Curve", f -> curve(f.curve()))
        .names("Shape", f -> f.shape().name().toLowerCase(Locale.ROOT))
        .ranges("Centre", f -> centre(f.centre()))
        .ranges("Height (dB)", f -> height(f))
        .ranges("Width (octaves)", f -> width(f.width()))
        .numbers(
            "Units that share it", f -> Cell.ordered(f.sharing() + " of " + f.units(), f.share()));
  }

  private static String curve(FixtureFeature.Curve curve) {
    return switch (curve) {
      case TRANSFER -> "new minus old";
      case FROM -> "old fixture";
      case TO -> "new fixture";
    };
  }

  private static Cell centre(FixtureFeature.Estimate c) {
    return Cell.ordered(
        Numbers.hertz(c.value()) + Texts.range(Numbers.hertz(c.low()), Numbers.hertz(c.high())),
        c.value());
  }

  private static Cell height(FixtureFeature f) {
    double db = f.height().value();
    double half = f.simultaneousHalfDb();
    return Cell.ordered(Texts.ranged(db, db - half, db + half), Math.abs(db));
  }

  private static Cell width(Optional<FixtureFeature.Estimate> width) {
    return width
        .map(w -> Cell.ordered(Texts.ranged(w.value(), w.low(), w.high()), w.value()))
        .orElse(Cell.without("not bounded"));
  }
}
