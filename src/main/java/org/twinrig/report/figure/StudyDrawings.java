package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Parallel;
import org.twinrig.response.Anchor;
import org.twinrig.study.Tolerance;

/** All drawings of a study, in the order of their sorts. */
public record StudyDrawings(List<Figure> all) {

  /** What a drawing shows; names of figures begin with it. One per kind but for DRIFT. */
  public enum Sort {
    TRANSFER,
    ERROR,
    BUDGET,
    /** One unit of each kind: the one with most captures left out. */
    CAPTURES,
    /** Of every unit that a doubt names, its difference against its kind's. */
    UNIT,
    /** All units of a kind, small. */
    UNITS,
    /** One per fixture. */
    DRIFT,
    REPEATABILITY,
    CALIBRATION,
    RANK,
    RESONANCE,
    FEATURE;

    private String prefix() {
      return name().toLowerCase(java.util.Locale.ROOT) + "-";
    }
  }

  public StudyDrawings {
    all = List.copyOf(all);
  }

  /** The drawings of one sort; empty where the study has nothing to show. */
  public List<Figure> of(Sort sort) {
    return all.stream().filter(f -> f.name().startsWith(sort.prefix())).toList();
  }

  public static StudyDrawings of(StudyOutcome outcome, int threads) {
    Tolerance tolerance = outcome.study().settings().tolerance();
    List<Supplier<Optional<Figure>>> work = new ArrayList<>();
    Anchor anchor = outcome.study().settings().anchor();
    each(outcome, work, (kind, c) -> Optional.of(TransferFigure.of(kind, c, anchor)));
    each(outcome, work, (kind, c) -> Optional.of(ErrorFigure.of(kind, tolerance, c)));
    each(outcome, work, (kind, caption) -> Optional.of(BudgetFigure.of(kind, caption)));
    each(outcome, work, (kind, c) -> CapturesFigure.of(outcome, shown(outcome, kind), c.kind()));
    for (KindOutcome kind : outcome.kinds()) {
      kind.paired().units().stream()
          .filter(unit -> outcome.doubts().stream().anyMatch(d -> d.isAbout(unit)))
          .forEach(
              u ->
                  work.add(
                      () -> UnitFigure.of(kind.paired(), u, Caption.of(outcome, kind), anchor)));
    }
    each(outcome, work, (kind, caption) -> UnitFigure.all(kind.paired(), caption));
    String fingerprint = outcome.fingerprint();
    outcome.sessions().stream()
        .flatMap(r -> r.fixtures().stream().map(f -> DriftFigure.of(f, r.unit(), fingerprint)))
        .forEach(figure -> work.add(() -> Optional.of(figure)));
    each(outcome, work, (kind, c) -> RepeatabilityFigure.of(kind, outcome.study(), c));
    each(outcome, work, CalibrationFigure::of);
    each(outcome, work, RankFigure::of);
    each(outcome, work, ResonanceFigure::of);
    each(outcome, work, (kind, c) -> FeatureFigure.of(kind, tolerance.equivalenceDb(), c));
    return new StudyDrawings(
        Parallel.map(work, threads, Supplier::get).stream().flatMap(Optional::stream).toList());
  }

  private static void each(
      StudyOutcome outcome,
      List<Supplier<Optional<Figure>>> work,
      BiFunction<KindOutcome, Caption, Optional<Figure>> drawing) {
    for (KindOutcome kind : outcome.kinds()) {
      work.add(() -> drawing.apply(kind, Caption.of(outcome, kind)));
    }
  }

  /** The unit of a kind with most captures left out. */
  private static String shown(StudyOutcome outcome, KindOutcome kind) {
    Set<CaptureEntry> out = CapturesFigure.leftOut(outcome);
    return kind.paired().units().stream()
        .max(
            Comparator.comparingLong(
                (String u) -> out.stream().filter(e -> e.unit().equals(u)).count()))
        .orElseThrow();
  }
}
