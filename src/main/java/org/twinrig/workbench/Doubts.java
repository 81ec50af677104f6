package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.screening.Verdict;

/**
 * What screening found about captures, and which of them are in doubt: those of which something was
 * found and which still count, because neither the lab nor a rule left them out.
 */
public final class Doubts {
  private final List<Unit> units;
  private final Map<CaptureEntry, List<Verdict>> verdicts = new HashMap<>();
  private final Map<String, List<CaptureEntry>> inDoubt = new LinkedHashMap<>();
  private final Map<String, List<CaptureEntry>> byRule = new LinkedHashMap<>();

  Doubts(Snapshot snapshot) {
    units = snapshot.study().units();
    snapshot.outcome().stream()
        .flatMap(o -> o.screening().verdicts().stream())
        .forEach(v -> verdicts.computeIfAbsent(v.capture(), c -> new ArrayList<>()).add(v));
    // In the order of the study's units; of a unit's captures, the old fixture's first.
    Map<String, List<CaptureEntry>> found = new LinkedHashMap<>();
    units.forEach(u -> found.put(u.name(), new ArrayList<>()));
    String from = snapshot.study().from().name();
    snapshot.study().captures().stream()
        .filter(c -> found.containsKey(c.unit()) && verdicts.containsKey(c))
        .sorted(Comparator.comparing(c -> !c.fixture().equals(from)))
        .forEach(c -> found.get(c.unit()).add(c));
    found.forEach(
        (unit, captures) -> {
          inDoubt.put(unit, captures.stream().filter(c -> !leftOut(c)).toList());
          byRule.put(unit, captures.stream().filter(this::leftOutByRuleAlone).toList());
        });
    inDoubt.values().removeIf(List::isEmpty);
    byRule.values().removeIf(List::isEmpty);
  }

  /** What was found about a capture, whether or not it still counts. */
  public List<Verdict> of(CaptureEntry capture) {
    return verdicts.getOrDefault(capture, List.of());
  }

  /** Whether a rule of screening left the capture out. */
  public boolean leftOutByRule(CaptureEntry capture) {
    return of(capture).stream().anyMatch(Verdict::excluded);
  }

  private boolean leftOutByRuleAlone(CaptureEntry capture) {
    return leftOutByRule(capture) && !capture.excludedByLab();
  }

  /** Whether the capture does not count. */
  public boolean leftOut(CaptureEntry capture) {
    return capture.excludedByLab() || leftOutByRule(capture);
  }

  /** The captures in doubt, by unit; only units that have some. */
  public Map<String, List<CaptureEntry>> inDoubt() {
    return Collections.unmodifiableMap(inDoubt);
  }

  /** The captures that a rule of screening left out, by unit; only units that have some. */
  public Map<String, List<CaptureEntry>> byRule() {
    return Collections.unmodifiableMap(byRule);
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
    for (int k = unit + step; k >= 0 && k < units.size(); k += step) {
      if (inDoubt.containsKey(units.get(k).name())) {
        return Optional.of(inDoubt.get(units.get(k).name()).get(0));
      }
    }
    return Optional.empty();
  }
}
