package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.evidence.UncertaintyBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.report.table.Result;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.Verdict;
import org.twinrig.study.CalibratorCheck;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Setting;
import org.twinrig.study.Study;

/** The report of a study, and its tables on what was measured and what came of it. */
public final class StudyPage {
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");
  private static final int SHORT_DIGITS = 12;

  private StudyPage() {}

  /**
   * One self-contained page.
   *
   * @param problems what was wrong with the lab's files
   */
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

  /** How many octaves of each kind carry each mark. */
  public static Sheet<?> octaves(List<KindOutcome> kinds) {
    return Sheet.of("Octaves of the frequency axis by mark", kinds)
        .names("Kind", KindOutcome::kind)
        .counts("Units", k -> k.paired().units().size())
        .hundredths("Reliable (octaves)", k -> k.transfer().octaves(Mark.RELIABLE))
        .hundredths("Caution (octaves)", k -> k.transfer().octaves(Mark.CAUTION))
        .hundredths("Unreliable (octaves)", k -> k.transfer().octaves(Mark.UNRELIABLE))
        .hundredths("No data (octaves)", StudySentences::octavesWithoutData);
  }

  /** Captures that rules doubt or that were left out, by whom and why; each in one row. */
  public static Sheet<?> screened(StudyOutcome outcome) {
    Map<CaptureEntry, List<Verdict>> byCapture = new LinkedHashMap<>();
    for (Verdict v : outcome.screening().verdicts()) {
      byCapture.computeIfAbsent(v.capture(), c -> new ArrayList<>()).add(v);
    }
    record Doubt(CaptureEntry capture, String found, String by) {}
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
    return Sheet.of("Captures doubted or left out", rows)
        .names("Unit", d -> d.capture().unit())
        .names("Fixture", d -> d.capture().fixture())
        .names("Side, seating", d -> d.capture().side().name() + ", " + d.capture().seating())
        .words("What was found", Doubt::found)
        .names("Left out", Doubt::by)
        .files("File", d -> d.capture().file());
  }

  /** What the calibrator read in each session, and what the check unit says of it. */
  public static Sheet<?> sessions(StudyOutcome outcome) {
    Optional<CalibratorCheck> check = CalibratorCheck.of(outcome.study().settings());
    Sheet<Session> sheet =
        Sheet.of(
                "Sessions: what the calibrator gave, what was read, what was added to captures",
                outcome.study().sessions())
            .names("Session", Session::name)
            .names("Date", Session::date)
            .names("Fixture", Session::fixture)
            .hundredths("Gave (dB)", Session::calibratorTrueDb)
            .hundredths("Read (dB)", Session::calibratorReadDb)
            .hundredths("Added (dB)", Session::correctionDb)
            .names(
                "Reading",
                s -> check.map(c -> c.holds(s) ? "in order" : "too far").orElse("not judged"));
    if (outcome.sessions().isEmpty()) {
      return sheet;
    }
    SessionReview review = outcome.sessions().get();
    Sheet<Session> checked = sheet.names("Check unit", s -> drift(review, s));
    return review
        .correction()
        .map(c -> checked.ranges("Drift taken out (dB)", s -> taken(c, s)))
        .orElse(checked);
  }

  private static String drift(SessionReview review, Session session) {
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
  private static Cell taken(DriftCorrection correction, Session session) {
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

  /** How far seatings scatter on either fixture. */
  public static Sheet<?> scatter(StudyOutcome outcome) {
    record Scatter(Region region, OptionalDouble from, OptionalDouble to) {}
    return Sheet.ofKinds(
            "Standard deviation between seatings, root mean square over the bands of a region",
            outcome.kinds(),
            kind ->
                Stream.of(Region.values())
                    .map(
                        r ->
                            new Scatter(
                                r,
                                sdDb(kind.repeatability().from(), r),
                                sdDb(kind.repeatability().to(), r)))
                    .filter(s -> s.from().isPresent() || s.to().isPresent())
                    .toList())
        .regions(Scatter::region)
        .numbers("Old fixture (dB)", s -> deviation(s.from()))
        .numbers("New fixture (dB)", s -> deviation(s.to()));
  }

  private static Cell deviation(OptionalDouble db) {
    return db.isPresent() ? Cell.hundredths(db.getAsDouble()) : Cell.without("not repeated");
  }

  private static OptionalDouble sdDb(List<Optional<Repeatability.Scatter>> bands, Region region) {
    List<Repeatability.Scatter> inside =
        bands.stream().flatMap(Optional::stream).filter(s -> region.holds(s.band())).toList();
    return inside.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(rms(inside, Repeatability.Scatter::sdDb));
  }

  static <T> double rms(List<T> values, ToDoubleFunction<T> of) {
    return Math.sqrt(values.stream().mapToDouble(of).map(x -> x * x).average().orElseThrow());
  }

  /** What averaging more seatings would buy. */
  public static Sheet<?> seatings(StudyOutcome outcome) {
    Sheet<SeatingsNeeded> sheet =
        Sheet.ofKinds(
                "Prediction half-width against the number of seatings",
                outcome.kinds(),
                KindOutcome::seatings)
            .regions(SeatingsNeeded::region);
    for (int k = 0; k < SeatingsNeeded.SEATINGS.size(); k++) {
      int column = k;
      sheet =
          sheet.hundredths(
              Numbers.count(SeatingsNeeded.SEATINGS.get(k), "seating", "seatings") + " (± dB)",
              n -> n.halfDb().get(column));
    }
    return sheet.hundredths("Never below (± dB)", SeatingsNeeded::neverBelowDb);
  }

  /** The error budget by kind and region; sources that are never there have no column. */
  public static Sheet<?> budget(StudyOutcome outcome) {
    Sheet<RegionBudget> sheet =
        Sheet.ofKinds(
                "Shares of the variance of one unit's translated level, and the whole",
                outcome.kinds(),
                k -> RegionBudget.of(k.budget()))
            .regions(RegionBudget::region)
            .numbers("Units (%)", share(ErrorSource.UNITS, "none"))
            .numbers("Seat\u00ading, old (%)", share(ErrorSource.SEATING_FROM, "in units"))
            .numbers("Seat\u00ading, new (%)", share(ErrorSource.SEATING_TO, "in units"))
            .numbers("Fit (%)", share(ErrorSource.FIT, "none"));
    if (ErrorBudget.Calibration.of(outcome.study().settings()) != ErrorBudget.Calibration.CANCELS) {
      sheet =
          sheet.numbers(
              "Cali\u00adbra\u00adtors (%)", b -> share(b.calibratorShare(), "not known"));
    }
    if (outcome.sessions().flatMap(SessionReview::correction).isPresent()) {
      sheet = sheet.numbers("Drift (%)", share(ErrorSource.DRIFT, "none"));
    }
    return sheet
        .numbers("Com\u00adbined (dB)", total(bands -> Cell.hundredths(combined(bands))))
        .numbers("Least d.f.", total(StudyPage::leastDegreesOfFreedom))
        .numbers("Fac\u00adtor", total(StudyPage::factor))
        .numbers("Ex\u00adpanded (dB)", total(bands -> Cell.hundredths(expanded(bands))));
  }

  private static Function<RegionBudget, Cell> share(ErrorSource source, String otherwise) {
    return b -> share(b.share(source), otherwise);
  }

  private static Cell share(OptionalDouble share, String otherwise) {
    return share.isPresent()
        ? Cell.ordered(Texts.percent(share.getAsDouble()), share.getAsDouble())
        : Cell.without(otherwise);
  }

  private static Function<RegionBudget, Cell> total(Function<List<UncertaintyBudget>, Cell> cell) {
    return b -> b.totals().map(cell).orElse(Cell.without("not known"));
  }

  private static double combined(List<UncertaintyBudget> bands) {
    return rms(bands, UncertaintyBudget::combined);
  }

  private static double expanded(List<UncertaintyBudget> bands) {
    return rms(bands, UncertaintyBudget::expanded);
  }

  private static Cell factor(List<UncertaintyBudget> bands) {
    return combined(bands) == 0
        ? Cell.without("none")
        : Cell.hundredths(expanded(bands) / combined(bands));
  }

  private static Cell leastDegreesOfFreedom(List<UncertaintyBudget> bands) {
    double least =
        bands.stream()
            .mapToDouble(UncertaintyBudget::effectiveDegreesOfFreedom)
            .min()
            .orElseThrow();
    return Double.isInfinite(least)
        ? Cell.ordered("∞", Double.MAX_VALUE)
        : Cell.ordered(Numbers.fixed(least, 1), least);
  }

  /** What the study was computed with: its fixtures and every setting. */
  public static Sheet<?> settings(Study study) {
    Map<String, String> rows = new LinkedHashMap<>();
    rows.put("Old fixture", study.from().label());
    rows.put("New fixture", study.to().label());
    Setting.ALL.forEach(setting -> rows.put(setting.label(), setting.words(study)));
    return Sheet.of("Settings in force", List.copyOf(rows.entrySet()))
        .words("Setting", Map.Entry::getKey)
        .words("Value", Map.Entry::getValue);
  }

  /** A result as its file has it, to read; numbers are sorted by what the file holds. */
  public static Sheet<?> file(Result<StudyOutcome> result, StudyOutcome outcome) {
    List<List<String>> exact = result.rows(outcome).toList();
    List<List<String>> shown = result.shown(outcome);
    Sheet<Integer> sheet =
        Sheet.of(result.file(), IntStream.range(0, shown.size()).boxed().toList());
    for (int c = 0; c < result.names().size(); c++) {
      int column = c;
      sheet =
          sheet.numbers(
              result.names().get(c),
              row -> cell(shown.get(row).get(column), exact.get(row).get(column)));
    }
    return sheet;
  }

  private static Cell cell(String shown, String exact) {
    return NUMBER.matcher(exact).matches()
        ? Cell.ordered(shown, Double.parseDouble(exact))
        : Cell.text(shown);
  }

  /** Every file that was read, with the start of its sum. */
  public static Sheet<?> inputs(InputFingerprint fingerprint) {
    return Sheet.of("Inputs", fingerprint.inputs())
        .files("File", InputFingerprint.Input::name)
        .words("SHA-256 begins with", i -> i.sha256().substring(0, SHORT_DIGITS));
  }
}
