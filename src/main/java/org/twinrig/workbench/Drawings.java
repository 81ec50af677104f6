package org.twinrig.workbench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.capture.Unit;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.CapturesFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.TransferFigure;
import org.twinrig.report.html.Plate;

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
        leaf,
        "transfer " + kind.kind(),
        () -> Optional.of(TransferFigure.of(kind, caption(leaf, kind))));
  }

  List<Plate> budget(Leaf leaf, KindOutcome kind) {
    return once(
        leaf,
        "budget " + kind.kind(),
        () -> Optional.of(BudgetFigure.of(kind, caption(leaf, kind))));
  }

  /** All captures of a unit; nothing when none can be shown. */
  List<Plate> captures(Leaf leaf, Unit unit) {
    return once(
        leaf,
        "captures " + unit.name(),
        () ->
            leaf.outcome()
                .flatMap(outcome -> CapturesFigure.of(outcome, unit.name(), unit.kind())));
  }

  private List<Plate> once(Leaf leaf, String name, Supplier<Optional<Figure>> figure) {
    Drawn now =
        drawn.updateAndGet(
            d ->
                d.revision() < leaf.revision() || d.plates().size() > MOST
                    ? Drawn.of(leaf.revision())
                    : d);
    return now.revision() == leaf.revision()
        ? now.plates().computeIfAbsent(name, k -> Plate.of(figure.get().stream().toList()))
        : Plate.of(figure.get().stream().toList()); // for a page that began before the change
  }

  private static Caption caption(Leaf leaf, KindOutcome kind) {
    return Caption.of(leaf.outcome().orElseThrow(), kind);
  }

  /** A kind by its name. */
  static Optional<KindOutcome> kind(Leaf leaf, String name) {
    return leaf.outcome().stream()
        .flatMap(o -> o.kinds().stream())
        .filter(k -> k.kind().equals(name))
        .findFirst();
  }
}
