package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.Study;

/**
 * Screens the captures of a study. What the lab left out is not judged and does not count.
 *
 * @param accepted the captures that count
 * @param verdicts what was found, in the order of the captures
 */
public record Screening(List<AnchoredCapture> accepted, List<Verdict> verdicts) {

  private static final Comparator<Verdict> IN_ORDER =
      Comparator.comparingInt((Verdict v) -> v.capture().line()).thenComparing(Verdict::finding);

  /** Copies the lists. */
  public Screening {
    accepted = List.copyOf(accepted);
    verdicts = List.copyOf(verdicts);
  }

  /**
   * Screens captures.
   *
   * @param study what the lab declared
   * @param captures all of its captures, anchored
   * @return those that count and what was found; under {@link ScreeningMode#SUGGEST} a verdict
   *     leaves nothing out
   */
  public static Screening of(Study study, List<AnchoredCapture> captures) {
    boolean exclude = study.settings().screening() == ScreeningMode.EXCLUDE;
    List<AnchoredCapture> offered =
        captures.stream().filter(c -> !c.capture().entry().excludedByLab()).toList();
    Map<String, String> kinds = new HashMap<>();
    for (Unit unit : study.units()) {
      kinds.put(unit.name(), unit.kind());
    }
    List<Verdict> verdicts = new ArrayList<>(SameContent.of(offered, exclude));
    for (List<Group> groups : Group.byScale(Group.of(offered, kinds::get)).values()) {
      verdicts.addAll(SealCheck.of(groups, exclude));
      verdicts.addAll(OddSeating.of(groups, exclude));
    }
    verdicts.sort(IN_ORDER);
    Set<CaptureEntry> out = new HashSet<>();
    verdicts.stream().filter(Verdict::excluded).forEach(v -> out.add(v.capture()));
    return new Screening(
        offered.stream().filter(c -> !out.contains(c.capture().entry())).toList(), verdicts);
  }

  /**
   * The same with more findings that leave nothing out.
   *
   * @param more verdicts of which none excludes its capture
   * @return the changed screening, its verdicts in the order of the captures
   * @throws IllegalArgumentException when one excludes its capture
   */
  public Screening with(List<Verdict> more) {
    if (more.stream().anyMatch(Verdict::excluded)) {
      throw new IllegalArgumentException("a capture cannot be left out after screening");
    }
    List<Verdict> all = new ArrayList<>(verdicts);
    all.addAll(more);
    all.sort(IN_ORDER);
    return new Screening(accepted, all);
  }
}
