package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Parallel;
import org.twinrig.screening.Verdict;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Tolerance;

/**
 * All drawings of a study.
 *
 * @param transfer the mean transfer, one per kind
 * @param errors the leave-one-unit-out errors, one per kind
 * @param budget where the error of a translated level comes from, one per kind
 * @param captures the captures of one unit per kind: the one with most captures left out
 * @param sessions the drift charts of the check unit, one per fixture; empty without one
 * @param repeatability how far seatings scatter, one per kind with repeated seatings
 * @param evidence whether the study supports its use
 */
public record StudyDrawings(
    List<Figure> transfer,
    List<Figure> errors,
    List<Figure> budget,
    List<Figure> captures,
    List<Figure> sessions,
    List<Figure> repeatability,
    EvidenceDrawings evidence) {

  /** Copies the lists. */
  public StudyDrawings {
    transfer = List.copyOf(transfer);
    errors = List.copyOf(errors);
    budget = List.copyOf(budget);
    captures = List.copyOf(captures);
    sessions = List.copyOf(sessions);
    repeatability = List.copyOf(repeatability);
  }

  /**
   * Draws a study.
   *
   * @param outcome what it found
   * @param threads how many threads to draw on
   * @return its drawings
   */
  public static StudyDrawings of(StudyOutcome outcome, int threads) {
    List<List<Supplier<Optional<Figure>>>> sorts = new ArrayList<>();
    sorts.add(each(outcome, (kind, caption) -> Optional.of(TransferFigure.of(kind, caption))));
    Tolerance tolerance = outcome.study().settings().tolerance();
    sorts.add(
        each(outcome, (kind, caption) -> Optional.of(ErrorFigure.of(kind, tolerance, caption))));
    sorts.add(each(outcome, (kind, caption) -> Optional.of(BudgetFigure.of(kind, caption))));
    sorts.add(each(outcome, (kind, caption) -> Optional.of(captures(outcome, kind, caption))));
    sorts.add(
        each(outcome, (kind, caption) -> RepeatabilityFigure.of(kind, fixtures(outcome), caption)));
    sorts.add(each(outcome, CalibrationFigure::of));
    sorts.add(each(outcome, RankFigure::of));
    sorts.add(each(outcome, ResonanceFigure::of));
    double least = tolerance.equivalenceDb();
    sorts.add(each(outcome, (kind, caption) -> FeatureFigure.of(kind, least, caption)));
    List<Optional<Figure>> drawn =
        Parallel.map(sorts.stream().flatMap(List::stream).toList(), threads, Supplier::get);
    int kinds = outcome.kinds().size();
    List<List<Figure>> sorted = new ArrayList<>();
    for (int k = 0; k < sorts.size(); k++) {
      sorted.add(
          drawn.subList(k * kinds, (k + 1) * kinds).stream().flatMap(Optional::stream).toList());
    }
    return new StudyDrawings(
        sorted.get(0),
        sorted.get(1),
        sorted.get(2),
        sorted.get(3),
        sessions(outcome, threads),
        sorted.get(4),
        new EvidenceDrawings(sorted.get(5), sorted.get(6), sorted.get(7), sorted.get(8)));
  }

  private static List<Figure> sessions(StudyOutcome outcome, int threads) {
    return outcome
        .sessions()
        .map(
            review ->
                Parallel.map(
                    review.fixtures(),
                    threads,
                    f -> DriftFigure.of(f, review.unit(), outcome.fingerprint())))
        .orElse(List.of());
  }

  private static List<Supplier<Optional<Figure>>> each(
      StudyOutcome outcome, BiFunction<KindOutcome, Caption, Optional<Figure>> drawing) {
    List<Supplier<Optional<Figure>>> work = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      work.add(() -> drawing.apply(kind, caption(outcome, kind)));
    }
    return work;
  }

  /**
   * All of them.
   *
   * @return in the order of the report
   */
  public List<Figure> all() {
    return Stream.of(transfer, errors, budget, captures, sessions, repeatability, evidence.all())
        .flatMap(List::stream)
        .toList();
  }

  private static CapturesFigure.Fixtures fixtures(StudyOutcome outcome) {
    return new CapturesFigure.Fixtures(
        outcome.study().from().label(), outcome.study().to().label());
  }

  private static Caption caption(StudyOutcome outcome, KindOutcome kind) {
    return new Caption(
        kind.kind(),
        kind.paired().units().size(),
        outcome.study().settings().confidence(),
        outcome.fingerprint());
  }

  private static Figure captures(StudyOutcome outcome, KindOutcome kind, Caption caption) {
    Set<CaptureEntry> out = new HashSet<>();
    outcome.screening().verdicts().stream()
        .filter(Verdict::excluded)
        .forEach(v -> out.add(v.capture()));
    outcome.study().captures().stream().filter(CaptureEntry::excludedByLab).forEach(out::add);
    String unit =
        kind.paired().units().stream()
            .max(
                Comparator.comparingLong(
                    (String u) -> out.stream().filter(e -> e.unit().equals(u)).count()))
            .orElseThrow();
    List<CapturesFigure.Trace> traces = new ArrayList<>();
    for (AnchoredCapture c : outcome.captures()) {
      CaptureEntry entry = c.capture().entry();
      if (entry.unit().equals(unit)) {
        traces.add(
            new CapturesFigure.Trace(
                entry.fixture().equals(outcome.study().to().name()),
                c.levels(),
                out.contains(entry)));
      }
    }
    return CapturesFigure.of(unit, traces, fixtures(outcome), caption);
  }
}
