package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.CapturesFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.TransferFigure;
import org.twinrig.report.html.Plate;
import org.twinrig.screening.Verdict;
import org.twinrig.study.AnchoredCapture;

/**
 * The figures of the leaf on top, each drawn when a page first shows it and then kept. A change
 * draws nothing: what was drawn for the leaf before it is dropped when the new one is looked at.
 */
final class Drawings {
  private static final int MOST = 400;

  /** What was drawn of one leaf. */
  private record Drawn(long revision, Map<String, List<Plate>> plates) {
    static Drawn of(long revision) {
      return new Drawn(revision, new ConcurrentHashMap<>());
    }
  }

  private final AtomicReference<Drawn> drawn = new AtomicReference<>(Drawn.of(0));

  List<Plate> transfer(Leaf leaf, KindOutcome kind) {
    return once(
        leaf, "transfer " + kind.kind(), () -> TransferFigure.of(kind, caption(leaf, kind)));
  }

  List<Plate> budget(Leaf leaf, KindOutcome kind) {
    return once(leaf, "budget " + kind.kind(), () -> BudgetFigure.of(kind, caption(leaf, kind)));
  }

  /** All captures of a unit; nothing when none can be shown. */
  List<Plate> captures(Leaf leaf, Unit unit) {
    if (leaf.outcome().isEmpty()) {
      return List.of();
    }
    List<CapturesFigure.Trace> traces = traces(leaf.outcome().get(), unit);
    if (traces.isEmpty()) {
      return List.of();
    }
    return once(
        leaf,
        "captures " + unit.name(),
        () ->
            CapturesFigure.of(
                unit.name(),
                traces,
                new CapturesFigure.Fixtures(leaf.study().from().label(), leaf.study().to().label()),
                new Caption(
                    unit.kind(),
                    1,
                    leaf.study().settings().confidence(),
                    leaf.fingerprint().shortText())));
  }

  private static List<CapturesFigure.Trace> traces(StudyOutcome outcome, Unit unit) {
    Set<CaptureEntry> out =
        outcome.screening().verdicts().stream()
            .filter(Verdict::excluded)
            .map(Verdict::capture)
            .collect(Collectors.toSet());
    List<CapturesFigure.Trace> traces = new ArrayList<>();
    for (AnchoredCapture c : outcome.captures()) {
      CaptureEntry entry = c.capture().entry();
      if (entry.unit().equals(unit.name())) {
        traces.add(
            new CapturesFigure.Trace(
                entry.fixture().equals(outcome.study().to().name()),
                c.levels(),
                entry.excludedByLab() || out.contains(entry)));
      }
    }
    return traces;
  }

  private List<Plate> once(Leaf leaf, String name, Supplier<Figure> figure) {
    Drawn now =
        drawn.updateAndGet(
            d ->
                d.revision() < leaf.revision() || d.plates().size() > MOST
                    ? Drawn.of(leaf.revision())
                    : d);
    return now.revision() == leaf.revision()
        ? now.plates().computeIfAbsent(name, k -> Plate.of(List.of(figure.get())))
        : Plate.of(List.of(figure.get())); // for a page that began before the change
  }

  private static Caption caption(Leaf leaf, KindOutcome kind) {
    return new Caption(
        kind.kind(),
        kind.paired().units().size(),
        leaf.study().settings().confidence(),
        leaf.fingerprint().shortText());
  }

  /** A kind by its name. */
  static Optional<KindOutcome> kind(Leaf leaf, String name) {
    return leaf.outcome().stream()
        .flatMap(o -> o.kinds().stream())
        .filter(k -> k.kind().equals(name))
        .findFirst();
  }
}
