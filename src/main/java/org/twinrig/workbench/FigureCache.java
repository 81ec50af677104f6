package org.twinrig.workbench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.CapturesFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.TransferFigure;
import org.twinrig.report.html.Plate;

/**
 * The figures of the latest snapshot, each drawn when a page first shows it and then kept. A change
 * draws nothing: what was drawn of the snapshot before it is dropped when the new one is looked at.
 */
public final class FigureCache {
  private static final int MOST = 400;

  /** What was drawn of one snapshot. */
  private record Drawn(long revision, Map<String, List<Plate>> plates) {
    static Drawn of(long revision) {
      return new Drawn(revision, new ConcurrentHashMap<>());
    }
  }

  private final AtomicReference<Drawn> drawn = new AtomicReference<>(Drawn.of(0));

  /** The transfer of a kind. */
  public List<Plate> transfer(Snapshot snapshot, KindOutcome kind) {
    return once(
        snapshot,
        "transfer " + kind.kind(),
        () -> Optional.of(TransferFigure.of(kind, caption(snapshot, kind))));
  }

  /** The error budget of a kind over frequency. */
  public List<Plate> budget(Snapshot snapshot, KindOutcome kind) {
    return once(
        snapshot,
        "budget " + kind.kind(),
        () -> Optional.of(BudgetFigure.of(kind, caption(snapshot, kind))));
  }

  /** All captures of a unit; nothing when none can be shown. */
  public List<Plate> captures(Snapshot snapshot, String unit, String kind) {
    return once(
        snapshot,
        "captures " + unit,
        () -> snapshot.outcome().flatMap(outcome -> CapturesFigure.of(outcome, unit, kind)));
  }

  private List<Plate> once(Snapshot snapshot, String name, Supplier<Optional<Figure>> figure) {
    long revision = snapshot.revision();
    Drawn now =
        drawn.updateAndGet(
            d -> d.revision() < revision || d.plates().size() > MOST ? Drawn.of(revision) : d);
    return now.revision() == revision
        ? now.plates().computeIfAbsent(name, k -> Plate.of(figure.get().stream().toList()))
        : Plate.of(figure.get().stream().toList()); // for a page that began before the change
  }

  private static Caption caption(Snapshot snapshot, KindOutcome kind) {
    return Caption.of(snapshot.outcome().orElseThrow(), kind);
  }
}
