package org.twinrig.workbench;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.Answers;
import org.twinrig.screening.Verdict;

/**
 * What screening found about captures, and which of them are in doubt: those of which something was
 * found and which still count, because neither the lab nor a rule left them out, and which the lab
 * did not confirm.
 */
public final class ScreenedCaptures {
  private final Snapshot snapshot;
  private final Map<CaptureEntry, List<Verdict>> verdicts;

  ScreenedCaptures(Snapshot snapshot) {
    this.snapshot = snapshot;
    this.verdicts =
        snapshot.outcome().stream()
            .flatMap(o -> o.screening().verdicts().stream())
            .collect(Collectors.groupingBy(Verdict::capture));
  }

  /** What was found about a capture, whether or not it still counts. */
  public List<Verdict> of(CaptureEntry capture) {
    return verdicts.getOrDefault(capture, List.of());
  }

  public boolean leftOutByRule(CaptureEntry capture) {
    return of(capture).stream().anyMatch(Verdict::excluded);
  }

  public boolean leftOut(CaptureEntry capture) {
    return capture.excludedByLab() || leftOutByRule(capture);
  }

  /** Whether the lab confirmed a capture: its reason answers all that was found. */
  public boolean confirmed(CaptureEntry capture) {
    return !of(capture).isEmpty()
        && of(capture).stream()
            .noneMatch(v -> Answers.to(v.finding().word(), capture.confirmed()).isEmpty());
  }

  /** The captures in doubt, by unit; only units that have some. */
  public Map<String, List<CaptureEntry>> inDoubt() {
    return found(c -> !leftOut(c) && !confirmed(c));
  }

  /** The captures that a rule of screening left out, by unit; only units that have some. */
  public Map<String, List<CaptureEntry>> byRule() {
    return found(c -> leftOutByRule(c) && !c.excludedByLab());
  }

  /** In the order of the study's units; of a unit's captures, the old fixture's first. */
  private Map<String, List<CaptureEntry>> found(Predicate<CaptureEntry> which) {
    String from = snapshot.study().from().name();
    Map<String, List<CaptureEntry>> found =
        snapshot.study().captures().stream()
            .filter(c -> verdicts.containsKey(c) && which.test(c))
            .sorted(Comparator.comparing(c -> !c.fixture().equals(from)))
            .collect(Collectors.groupingBy(CaptureEntry::unit));
    Map<String, List<CaptureEntry>> inOrder = new LinkedHashMap<>();
    for (Unit unit : snapshot.study().units()) {
      Optional.ofNullable(found.get(unit.name())).ifPresent(c -> inOrder.put(unit.name(), c));
    }
    return inOrder;
  }

  /** What was found about captures, in few words. */
  public String words(List<CaptureEntry> captures) {
    return captures.stream()
        .flatMap(c -> of(c).stream())
        .map(v -> v.finding().word())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** The first capture in doubt of the next unit that has some, up or down the study's units. */
  public Optional<CaptureEntry> next(int unit, int step) {
    List<Unit> units = snapshot.study().units();
    Map<String, List<CaptureEntry>> inDoubt = inDoubt();
    for (int k = unit + step; k >= 0 && k < units.size(); k += step) {
      if (inDoubt.containsKey(units.get(k).name())) {
        return Optional.of(inDoubt.get(units.get(k).name()).get(0));
      }
    }
    return Optional.empty();
  }
}
