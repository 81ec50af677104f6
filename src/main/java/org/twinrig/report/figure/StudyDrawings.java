package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.evidence.Repeatability;
import org.twinrig.internal.Parallel;
import org.twinrig.screening.Verdict;
import org.twinrig.study.AnchoredCapture;

/**
 * All drawings of a study.
 *
 * @param transfer the mean transfer, one per kind
 * @param errors the leave-one-unit-out errors, one per kind
 * @param budget where the error of a translated level comes from, one per kind
 * @param captures the captures of one unit per kind: the one with most captures left out
 * @param repeatability how far seatings scatter, one per kind
 * @param sessions the drift charts of the check unit, one per fixture; empty without one
 */
public record StudyDrawings(
    List<Figure> transfer,
    List<Figure> errors,
    List<Figure> budget,
    List<Figure> captures,
    List<Figure> repeatability,
    List<Figure> sessions) {

  /** Copies the lists. */
  public StudyDrawings {
    transfer = List.copyOf(transfer);
    errors = List.copyOf(errors);
    budget = List.copyOf(budget);
    captures = List.copyOf(captures);
    repeatability = List.copyOf(repeatability);
    sessions = List.copyOf(sessions);
  }

  /**
   * Draws a study.
   *
   * @param outcome what it found
   * @param threads how many threads to draw on
   * @return its drawings
   */
  public static StudyDrawings of(StudyOutcome outcome, int threads) {
    List<Supplier<Figure>> work = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      Caption caption = caption(outcome, kind);
      work.add(() -> TransferFigure.of(kind, caption));
      work.add(() -> ErrorFigure.of(kind, outcome.study().settings().tolerance(), caption));
      work.add(() -> BudgetFigure.of(kind, caption));
      work.add(() -> captures(outcome, kind, caption));
    }
    List<Figure> drawn = Parallel.map(work, threads, Supplier::get);
    return new StudyDrawings(
        every(drawn, 0),
        every(drawn, 1),
        every(drawn, 2),
        every(drawn, 3),
        Parallel.map(outcome.repeatability(), threads, r -> repeatability(outcome, r)),
        outcome.sessions().stream()
            .flatMap(
                review ->
                    review.fixtures().stream()
                        .map(f -> DriftFigure.of(f, review.unit(), outcome.fingerprint())))
            .toList());
  }

  /**
   * All of them.
   *
   * @return in the order of the report
   */
  public List<Figure> all() {
    List<Figure> all = new ArrayList<>(transfer);
    all.addAll(errors);
    all.addAll(budget);
    all.addAll(captures);
    all.addAll(sessions);
    all.addAll(repeatability);
    return all;
  }

  private static List<Figure> every(List<Figure> drawn, int offset) {
    List<Figure> some = new ArrayList<>();
    for (int k = offset; k < drawn.size(); k += 4) {
      some.add(drawn.get(k));
    }
    return some;
  }

  private static Caption caption(StudyOutcome outcome, KindOutcome kind) {
    return new Caption(
        kind.kind(),
        kind.paired().units().size(),
        outcome.study().settings().confidence(),
        outcome.fingerprint());
  }

  private static Figure repeatability(StudyOutcome outcome, Repeatability kind) {
    int units =
        Stream.concat(kind.from().stream(), kind.to().stream())
            .mapToInt(Repeatability.AtBand::units)
            .max()
            .orElse(0);
    return RepeatabilityFigure.of(
        kind,
        new CapturesFigure.Fixtures(outcome.study().from().label(), outcome.study().to().label()),
        new Caption(
            kind.kind(), units, outcome.study().settings().confidence(), outcome.fingerprint()));
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
    return CapturesFigure.of(
        unit,
        traces,
        new CapturesFigure.Fixtures(outcome.study().from().label(), outcome.study().to().label()),
        caption);
  }
}
