package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.UncertaintyBudget;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.report.table.Result;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.Verdict;
import org.twinrig.study.DbLimit;
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

  /**
   * What is asked of translated levels in a region, and how far one seating on the new fixture lies
   * from another and from the mean of as many as in the study: half-widths, dB.
   */
  public record Direct(
      Region region, String reliable, String caution, double oneDb, double meanDb) {}

  /** That of a kind, for the regions above 4 kHz in which any seating was repeated. */
  public static List<Direct> direct(Study study, KindOutcome kind) {
    List<Direct> rows = new ArrayList<>();
    double confidence = study.settings().confidence();
    for (Region region : List.of(Region.RESONANCES, Region.TOP)) {
      List<Repeatability.Scatter> inside = inside(kind.repeatability().to(), region);
      if (!inside.isEmpty()) {
        rows.add(
            new Direct(
                region,
                asked(study.settings().tolerance().reliable(), inside),
                asked(study.settings().tolerance().caution(), inside),
                rms(inside, s -> s.repeatDb(1, confidence)),
                rms(inside, s -> s.repeatDb(s.seatings(), confidence))));
      }
    }
    return rows;
  }

  private static String asked(DbLimit limit, List<Repeatability.Scatter> bands) {
    DoubleSummaryStatistics db =
        bands.stream().mapToDouble(s -> limit.atHz(s.band().midHz())).summaryStatistics();
    String least = Numbers.fixed(db.getMin(), 2);
    return db.getMin() == db.getMax()
        ? least
        : least + "\u00a0to\u00a0" + Numbers.fixed(db.getMax(), 2);
  }

  private static List<Repeatability.Scatter> inside(
      List<Optional<Repeatability.Scatter>> bands, Region region) {
    return bands.stream().flatMap(Optional::stream).filter(s -> region.holds(s.band())).toList();
  }

  private static OptionalDouble sdDb(List<Optional<Repeatability.Scatter>> bands, Region region) {
    List<Repeatability.Scatter> inside = inside(bands, region);
    return inside.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(rms(inside, Repeatability.Scatter::sdDb));
  }

  /** The root mean square of some values; there is at least one. */
  public static <T> double rms(List<T> values, ToDoubleFunction<T> of) {
    return Math.sqrt(values.stream().mapToDouble(of).map(x -> x * x).average().orElseThrow());
  }

  /** An uncertainty of a region, dB; nothing without known calibrators. */
  public static OptionalDouble rms(
      RegionBudget region, ToDoubleFunction<UncertaintyBudget> uncertainty) {
    return region
        .totals()
        .map(bands -> OptionalDouble.of(rms(bands, uncertainty)))
        .orElse(OptionalDouble.empty());
  }

  /** Where resonances are looked for, kinds of the same range together. */
  public static String searched(StudyOutcome outcome) {
    Map<FrequencyRange, List<String>> kinds = new LinkedHashMap<>();
    outcome
        .kinds()
        .forEach(
            k ->
                kinds
                    .computeIfAbsent(
                        outcome.study().settings().resonanceSearch(k.kind()),
                        r -> new ArrayList<>())
                    .add(k.kind()));
    return kinds.entrySet().stream()
        .map(
            e ->
                "from "
                    + Texts.range(e.getKey().fromHz(), e.getKey().toHz())
                    + (kinds.size() == 1 ? "" : " on " + Texts.joined(e.getValue())))
        .collect(Collectors.joining("; "));
  }

  /** A number to 0.01 that may not be known. */
  public static Cell known(OptionalDouble value) {
    return value.isPresent() ? Cell.hundredths(value.getAsDouble()) : Cell.without(NOT_KNOWN);
  }

  public static Cell factor(RegionBudget region) {
    OptionalDouble combined = rms(region, UncertaintyBudget::combined);
    if (combined.isEmpty()) {
      return Cell.without(NOT_KNOWN);
    }
    return combined.getAsDouble() == 0
        ? Cell.without("none")
        : Cell.hundredths(
            rms(region, UncertaintyBudget::expanded).getAsDouble() / combined.getAsDouble());
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

  public static int unitsOnBoth(StudyOutcome outcome) {
    return outcome.kinds().stream().mapToInt(k -> k.paired().units().size()).sum();
  }

  /** How many units are listed, and what became of those no estimate rests on. */
  public static String units(StudyOutcome outcome) {
    List<Unit> listed = outcome.study().units();
    int least = outcome.study().settings().minUnits();
    int few =
        outcome.kinds().stream()
            .mapToInt(k -> k.paired().units().size())
            .filter(n -> n < least)
            .sum();
    int fitted = unitsOnBoth(outcome) - few;
    long heldOut = count(listed, Unit.Role.HOLDOUT);
    long check = count(listed, Unit.Role.CHECK);
    long lacking = count(listed, Unit.Role.FIT) - fitted - few;
    String ofSmall = " of kinds with fewer than " + least;
    String capture = " a usable capture on a fixture";
    String others =
        Stream.of(
                part(heldOut, "is held out", "are held out"),
                part(check, "is for checks only", "are for checks only"),
                part(few, "is" + ofSmall, "are" + ofSmall),
                part(lacking, "lacks" + capture, "lack" + capture))
            .flatMap(Optional::stream)
            .collect(Collectors.joining(", "));
    return "Of "
        + Numbers.count(listed.size(), "unit", "units")
        + " listed, "
        + (others.isEmpty()
            ? "every one enters the estimates."
            : Numbers.count(fitted, "enters", "enter") + " the estimates; " + others + ".");
  }

  private static Optional<String> part(long number, String one, String many) {
    return number <= 0 ? Optional.empty() : Optional.of(Numbers.count(number, one, many));
  }

  private static long count(List<Unit> units, Unit.Role role) {
    return units.stream().filter(u -> u.role() == role).count();
  }

  /** How wide the bands of a kind are together that are as said, in octaves. */
  public static double octaves(KindOutcome kind, Predicate<MarkedBand> which) {
    return kind.transfer().bands().stream()
        .filter(which)
        .mapToDouble(b -> b.band().octaves())
        .sum();
  }

  /** How many units left out stayed inside their interval at every band, kind by kind. */
  public static String wholeCurves(StudyOutcome outcome) {
    List<String> kinds = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      double[] inside =
          kind.evidence().leftOut().ofUnits(Optional.empty()).stream()
              .flatMapToDouble(u -> u.inside().stream())
              .toArray();
      if (inside.length > 0) {
        long whole = Arrays.stream(inside).filter(share -> share == 1).count();
        kinds.add(whole + " of " + inside.length + " (" + kind.kind() + ")");
      }
    }
    return kinds.isEmpty() ? "too few units to tell" : Texts.joined(kinds);
  }

  public static List<String> heldOut(StudyOutcome outcome) {
    return outcome.study().units().stream()
        .filter(u -> u.role() == Unit.Role.HOLDOUT)
        .map(Unit::name)
        .toList();
  }

  /** Those that could not be predicted and compared with their captures. */
  public static List<String> notJudged(StudyOutcome outcome) {
    Set<String> judged = new HashSet<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence().heldOut().ofUnits(Optional.empty()).forEach(u -> judged.add(u.unit()));
    }
    return heldOut(outcome).stream().filter(u -> !judged.contains(u)).toList();
  }

  /** The expanded uncertainties of the Monte Carlo run as shares of the budget's. */
  public static DoubleSummaryStatistics expanded(List<BandBudget> checked) {
    return checked.stream()
        .mapToDouble(
            b -> b.monteCarlo().orElseThrow().expandedDb() / b.total().orElseThrow().expanded())
        .summaryStatistics();
  }

  /** How many captures have a verdict that is as said. */
  public static long captures(StudyOutcome outcome, Predicate<Verdict> which) {
    return outcome.screening().verdicts().stream()
        .filter(which)
        .map(Verdict::capture)
        .distinct()
        .count();
  }

  /** Sessions with the same charts outside and the same limit, which share a sentence. */
  public static Collection<List<FixtureDrift.OutOfControl>> outOfControl(FixtureDrift fixture) {
    return fixture.outOfControl().stream()
        .collect(
            Collectors.groupingBy(
                o -> List.of(o.charts(), o.worst(), Numbers.fixed(o.limitDb(), 2)),
                LinkedHashMap::new,
                Collectors.toList()))
        .values();
  }
}
