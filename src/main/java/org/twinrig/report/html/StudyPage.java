package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.UncertaintyBudget;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.report.figure.RankFigure;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.report.table.Result;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.Verdict;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Setting;
import org.twinrig.study.Study;

/** The report of a study, and what its tables show that has to be looked up or reckoned. */
public final class StudyPage {
  private static final String NOT_KNOWN = "not known";

  private StudyPage() {}

  /** One self-contained page; the problems are those of the lab's files. */
  public static String html(
      StudyOutcome outcome,
      InputFingerprint fingerprint,
      List<Problem> problems,
      StudyDrawings figures) {
    return Page.fill(
        "study.jte",
        Map.of(
            "outcome", outcome,
            "fingerprint", fingerprint,
            "problems", problems,
            "figures", figures));
  }

  /** A capture that rules doubt or that was left out: what was found, and who left it out. */
  public record Doubt(CaptureEntry capture, String found, String by) {}

  /** Captures that rules doubt or that were left out; each in one row. */
  public static List<Doubt> doubts(StudyOutcome outcome) {
    Map<CaptureEntry, List<Verdict>> byCapture = new LinkedHashMap<>();
    for (Verdict v : outcome.screening().verdicts()) {
      byCapture.computeIfAbsent(v.capture(), c -> new ArrayList<>()).add(v);
    }
    List<Doubt> rows = new ArrayList<>();
    byCapture.forEach(
        (capture, verdicts) ->
            rows.add(
                new Doubt(
                    capture,
                    verdicts.stream().map(Verdict::sentence).collect(Collectors.joining("; ")),
                    verdicts.stream().anyMatch(Verdict::excluded) ? "by a rule" : "no")));
    outcome.study().captures().stream()
        .filter(CaptureEntry::excludedByLab)
        .forEach(c -> rows.add(new Doubt(c, c.exclude(), "by the lab")));
    return rows;
  }

  public static String checkUnit(SessionReview review, Session session) {
    Optional<FixtureDrift> fixture =
        review.fixtures().stream().filter(f -> f.fixture().equals(session.fixture())).findFirst();
    if (fixture.isEmpty() || fixture.get().without().contains(session.name())) {
      return "not captured";
    }
    if (fixture.get().level().limits().isEmpty()) {
      return "no limits";
    }
    boolean out =
        fixture.get().outOfControl().stream().anyMatch(o -> o.session().equals(session.name()));
    return out ? "out of control" : "steady";
  }

  /** The least and the most that was taken out at any octave. */
  public static Cell taken(DriftCorrection correction, Session session) {
    DoubleSummaryStatistics taken =
        correction.taken().stream()
            .filter(t -> t.session().equals(session.name()))
            .mapToDouble(DriftCorrection.Taken::departureDb)
            .summaryStatistics();
    return Cell.text(
        taken.getCount() == 0
            ? "nothing"
            : Numbers.fixed(taken.getMin(), 2)
                + "\u00a0to\u00a0"
                + Numbers.fixed(taken.getMax(), 2));
  }

  /** How far seatings scatter in a region, dB; nothing on a fixture where none was repeated. */
  public record Scatter(Region region, OptionalDouble from, OptionalDouble to) {}

  /** How far seatings of a kind scatter, for the regions in which any was repeated. */
  public static List<Scatter> scatter(KindOutcome kind) {
    return Stream.of(Region.values())
        .map(
            r ->
                new Scatter(
                    r, sdDb(kind.repeatability().from(), r), sdDb(kind.repeatability().to(), r)))
        .filter(s -> s.from().isPresent() || s.to().isPresent())
        .toList();
  }

  private static OptionalDouble sdDb(List<Optional<Repeatability.Scatter>> bands, Region region) {
    List<Repeatability.Scatter> inside =
        bands.stream().flatMap(Optional::stream).filter(s -> region.holds(s.band())).toList();
    return inside.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(rms(inside, Repeatability.Scatter::sdDb));
  }

  /** The root mean square of some values; there is at least one. */
  public static <T> double rms(List<T> values, ToDoubleFunction<T> of) {
    return Math.sqrt(values.stream().mapToDouble(of).map(x -> x * x).average().orElseThrow());
  }

  /** The combined standard uncertainty of a region, dB; nothing without known calibrators. */
  public static OptionalDouble combined(RegionBudget region) {
    return rms(region, UncertaintyBudget::combined);
  }

  public static OptionalDouble expanded(RegionBudget region) {
    return rms(region, UncertaintyBudget::expanded);
  }

  private static OptionalDouble rms(
      RegionBudget region, ToDoubleFunction<UncertaintyBudget> uncertainty) {
    return region
        .totals()
        .map(bands -> OptionalDouble.of(rms(bands, uncertainty)))
        .orElse(OptionalDouble.empty());
  }

  /** A number to 0.01 that may not be known. */
  public static Cell known(OptionalDouble value) {
    return value.isPresent() ? Cell.hundredths(value.getAsDouble()) : Cell.without(NOT_KNOWN);
  }

  public static Cell factor(RegionBudget region) {
    if (combined(region).isEmpty()) {
      return Cell.without(NOT_KNOWN);
    }
    double combined = combined(region).getAsDouble();
    return combined == 0
        ? Cell.without("none")
        : Cell.hundredths(expanded(region).getAsDouble() / combined);
  }

  public static Cell leastDegreesOfFreedom(RegionBudget region) {
    if (region.totals().isEmpty()) {
      return Cell.without(NOT_KNOWN);
    }
    double least =
        region.totals().get().stream()
            .mapToDouble(UncertaintyBudget::effectiveDegreesOfFreedom)
            .min()
            .orElseThrow();
    return Double.isInfinite(least)
        ? Cell.ordered("∞", Double.MAX_VALUE)
        : Cell.ordered(Numbers.fixed(least, 1), least);
  }

  /** The unit of a kind that was missed most, by region. */
  public static List<PredictionErrors> missedMost(KindOutcome kind) {
    Validation leftOut = kind.evidence().leftOut();
    return Stream.of(Region.values()).flatMap(r -> leftOut.worst(Optional.of(r)).stream()).toList();
  }

  /** Stated against reached coverage, one row per kind and way of leaving units out. */
  public static List<Sheet.Row<List<Coverage>>> coverage(StudyOutcome outcome) {
    return outcome.kinds().stream().flatMap(StudyPage::coverage).toList();
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
            .map(
                u ->
                    u.unit()
                        + " from "
                        + RankFigure.rank(u.rankFrom())
                        + " to "
                        + RankFigure.rank(u.rankTo()))
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

  /** What the study was computed with: its fixtures and every setting, with their names. */
  public static List<Map.Entry<String, String>> settings(Study study) {
    List<Map.Entry<String, String>> rows = new ArrayList<>();
    rows.add(Map.entry("Old fixture", study.from().label()));
    rows.add(Map.entry("New fixture", study.to().label()));
    Setting.ALL.forEach(setting -> rows.add(Map.entry(setting.label(), setting.words(study))));
    return rows;
  }

  /** A result as its file has it, to read; numbers are sorted by what the file holds. */
  public static Sheet<?> file(Result<StudyOutcome> result, StudyOutcome outcome) {
    List<List<String>> exact = result.rows(outcome).toList();
    List<List<String>> shown = result.shown(outcome);
    Sheet<Integer> sheet =
        Sheet.of(result.file(), IntStream.range(0, shown.size()).boxed().toList());
    for (int c = 0; c < result.names().size(); c++) {
      int column = c;
      String name = result.names().get(c);
      sheet =
          result.isText(c)
              ? sheet.names(name, row -> shown.get(row).get(column))
              : sheet.numbers(
                  name, row -> cell(shown.get(row).get(column), exact.get(row).get(column)));
    }
    return sheet;
  }

  private static Cell cell(String shown, String exact) {
    return exact.isEmpty() ? Cell.text(shown) : Cell.ordered(shown, Double.parseDouble(exact));
  }
}
