package org.twinrig.workbench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.CapturesFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.TransferFigure;
import org.twinrig.report.figure.UnitFigure;
import org.twinrig.report.html.Plate;

/**
 * The figures of the latest snapshot, each drawn when a page first shows it and then kept. A change
 * draws nothing: what was drawn of the snapshot before it is dropped when the new one is looked at.
 */
public final class FigureCache {
  private static final int MOST = 400;

  private record Drawn(long revision, Map<String, List<Plate>> plates) {}

  private final AtomicReference<Drawn> drawn = new AtomicReference<>(new Drawn(0, Map.of()));

  public List<Plate> transfer(Snapshot snapshot, KindOutcome kind) {
    return once(
        snapshot,
        "transfer " + kind.kind(),
        o ->
            Optional.of(
                TransferFigure.of(kind, Caption.of(o, kind), o.study().settings().anchor())));
  }

  public List<Plate> budget(Snapshot snapshot, KindOutcome kind) {
    return once(
        snapshot,
        "budget " + kind.kind(),
        o -> Optional.of(BudgetFigure.of(kind, Caption.of(o, kind))));
  }

  public List<Plate> captures(Snapshot snapshot, String unit, String kind) {
    return once(snapshot, "captures " + unit, o -> CapturesFigure.of(o, unit, kind));
  }

  /** A unit against its kind; nothing where it does not enter a fit, or has too few others. */
  public List<Plate> unit(Snapshot snapshot, String unit) {
    return once(
        snapshot,
        "unit " + unit,
        o -> o.kinds().stream().flatMap(kind -> drawn(o, kind, unit).stream()).findFirst());
  }

  private static Optional<Figure> drawn(StudyOutcome outcome, KindOutcome kind, String unit) {
    return UnitFigure.of(
        kind.paired(), unit, Caption.of(outcome, kind), outcome.study().settings().anchor());
  }

  private List<Plate> once(
      Snapshot snapshot, String name, Function<StudyOutcome, Optional<Figure>> figure) {
    long revision = snapshot.revision();
    Drawn now =
        drawn.updateAndGet(
            d ->
                d.revision < revision || d.plates.size() > MOST
                    ? new Drawn(revision, new ConcurrentHashMap<>())
                    : d);
    Function<String, List<Plate>> plates =
        n -> Plate.of(snapshot.outcome().flatMap(figure).stream().toList());
    // A page that began before the change draws for itself.
    return now.revision == revision ? now.plates.computeIfAbsent(name, plates) : plates.apply(name);
  }
}
