package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.Verdict;
import org.twinrig.workbench.view.ContentsView;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.UnitView;

/**
 * What screening found about captures, and which of them are in doubt: those of which something was
 * found and which still count, because neither the lab nor a rule left them out.
 */
final class Doubts {
  private final boolean screened;
  private final List<Unit> units;
  private final Map<CaptureEntry, List<Verdict>> verdicts = new HashMap<>();
  private final Map<String, List<CaptureEntry>> inDoubt = new LinkedHashMap<>();
  private final Map<String, List<CaptureEntry>> byRule = new LinkedHashMap<>();

  private Doubts(Leaf leaf) {
    screened = leaf.outcome().isPresent();
    units = leaf.study().units();
    leaf.outcome().stream()
        .flatMap(o -> o.screening().verdicts().stream())
        .forEach(v -> verdicts.computeIfAbsent(v.capture(), c -> new ArrayList<>()).add(v));
    for (Unit unit : units) {
      List<CaptureEntry> found = entries(leaf, unit).filter(c -> !of(c).isEmpty()).toList();
      put(inDoubt, unit, found.stream().filter(c -> !leftOut(c)).toList());
      put(
          byRule,
          unit,
          found.stream().filter(c -> leftOutByRule(c) && !c.excludedByLab()).toList());
    }
  }

  private static void put(
      Map<String, List<CaptureEntry>> units, Unit unit, List<CaptureEntry> captures) {
    if (!captures.isEmpty()) {
      units.put(unit.name(), captures);
    }
  }

  static Doubts of(Leaf leaf) {
    return new Doubts(leaf);
  }

  /** A unit's captures as its page lists them: the old fixture first. */
  private static Stream<CaptureEntry> entries(Leaf leaf, Unit unit) {
    String from = leaf.study().from().name();
    return leaf.study().captures().stream()
        .filter(c -> c.unit().equals(unit.name()))
        .sorted(Comparator.comparing(c -> !c.fixture().equals(from)));
  }

  /** What was found about a capture, whether or not it still counts. */
  List<Verdict> of(CaptureEntry capture) {
    return verdicts.getOrDefault(capture, List.of());
  }

  /** Whether a rule of screening left the capture out. */
  boolean leftOutByRule(CaptureEntry capture) {
    return of(capture).stream().anyMatch(Verdict::excluded);
  }

  /** Whether the capture does not count. */
  boolean leftOut(CaptureEntry capture) {
    return capture.excludedByLab() || leftOutByRule(capture);
  }

  /** How many captures of a unit are in doubt. */
  long count(Unit unit) {
    return inDoubt.getOrDefault(unit.name(), List.of()).size();
  }

  /** How many are in doubt in all. */
  String sentence() {
    if (!screened) {
      return "The study cannot be estimated now, so its captures are not screened.";
    }
    int captures = inDoubt.values().stream().mapToInt(List::size).sum();
    return captures == 0
        ? "No capture is in doubt: of those that count, screening doubts none."
        : Numbers.count(captures, "capture", "captures")
            + " of "
            + Numbers.count(inDoubt.size(), "unit", "units")
            + (captures == 1 ? " is" : " are")
            + " in doubt: screening doubts "
            + (captures == 1 ? "it, and it still counts." : "them, and they still count.");
  }

  /** The units in doubt, in the order of the study. */
  List<ContentsView.Doubted> units() {
    return units(inDoubt);
  }

  /** The units of which a rule of screening left captures out, in the order of the study. */
  List<ContentsView.Doubted> ruled() {
    return units(byRule);
  }

  private List<ContentsView.Doubted> units(Map<String, List<CaptureEntry>> captures) {
    return captures.entrySet().stream()
        .map(
            e ->
                new ContentsView.Doubted(
                    link(e.getKey(), e.getValue()),
                    Numbers.count(e.getValue().size(), "capture", "captures"),
                    e.getValue().stream()
                        .flatMap(c -> of(c).stream())
                        .map(v -> v.finding().word())
                        .distinct()
                        .collect(Collectors.joining(", "))))
        .toList();
  }

  /** The captures of a unit in doubt, each with the way to its entry on the unit's page. */
  List<UnitView.Doubt> list(Leaf leaf, Unit unit) {
    return inDoubt.getOrDefault(unit.name(), List.of()).stream()
        .map(
            c ->
                new UnitView.Doubt(
                    new Link(
                        CapturesPages.title(c)
                            + ", "
                            + (c.fixture().equals(leaf.study().from().name())
                                ? leaf.study().from().label()
                                : leaf.study().to().label()),
                        "#entry-" + c.line()),
                    of(c).stream().map(Verdict::sentence).toList()))
        .toList();
  }

  /** The last unit in doubt before one, at its first capture in doubt. */
  Optional<Link> before(int unit) {
    for (int k = unit - 1; k >= 0; k--) {
      if (count(units.get(k)) > 0) {
        return Optional.of(link(k));
      }
    }
    return Optional.empty();
  }

  /** The first unit in doubt after one, at its first capture in doubt. */
  Optional<Link> after(int unit) {
    for (int k = unit + 1; k < units.size(); k++) {
      if (count(units.get(k)) > 0) {
        return Optional.of(link(k));
      }
    }
    return Optional.empty();
  }

  private Link link(int unit) {
    String name = units.get(unit).name();
    return link(name, inDoubt.get(name));
  }

  private static Link link(String unit, List<CaptureEntry> captures) {
    return new Link(unit, "./unit?name=" + Pages.query(unit) + "#entry-" + captures.get(0).line());
  }
}
