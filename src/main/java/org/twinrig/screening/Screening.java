package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/**
 * Screens the captures of a study. What the lab left out is not judged and does not count. A
 * capture whose seal was lost is not also accused of being odd or of a jump in level.
 *
 * <p>Verdicts stand in the order of the captures.
 */
public record Screening(List<AnchoredCapture> accepted, List<Verdict> verdicts) {

  private static final Comparator<Verdict> IN_ORDER =
      Comparator.comparingInt((Verdict v) -> v.capture().line()).thenComparing(Verdict::finding);

  public Screening {
    accepted = List.copyOf(accepted);
    verdicts = List.copyOf(verdicts);
  }

  /**
   * Screens captures. Under {@link org.twinrig.study.ScreeningMode#SUGGEST} a verdict leaves
   * nothing out but copies, under {@link org.twinrig.study.ScreeningMode#EXCLUDE} one whose finding
   * is {@linkplain Finding#disbelieved() not to be believed} does.
   */
  public static Screening of(Study study, List<AnchoredCapture> captures) {
    return of(study, captures, SameContent.of(offered(captures)));
  }

  /**
   * Screens the same captures anew after the shape of their curves was corrected, which hides
   * copies of one curve in several sessions from each other.
   */
  public Screening again(Study study, List<AnchoredCapture> corrected) {
    Set<Finding> copies = EnumSet.of(Finding.SAME_CONTENT, Finding.HAS_COPIES);
    return of(
        study, corrected, verdicts.stream().filter(v -> copies.contains(v.finding())).toList());
  }

  private static Screening of(Study study, List<AnchoredCapture> captures, List<Verdict> copies) {
    List<AnchoredCapture> offered = offered(captures);
    List<Verdict> doubts = new ArrayList<>(copies);
    doubts.addAll(doubts(study, offered));
    List<Verdict> verdicts =
        unexplained(doubts).stream()
            .map(v -> v.under(study.settings().screening()))
            .sorted(IN_ORDER)
            .toList();
    Set<CaptureEntry> out =
        verdicts.stream()
            .filter(Verdict::excluded)
            .map(Verdict::capture)
            .collect(Collectors.toSet());
    List<AnchoredCapture> accepted =
        offered.stream().filter(c -> !out.contains(c.entry())).toList();
    return new Screening(accepted, verdicts);
  }

  public static List<AnchoredCapture> offered(List<AnchoredCapture> captures) {
    return captures.stream().filter(c -> !c.entry().excludedByLab()).toList();
  }

  /** A lost seal alone makes a seating odd and changes its level: that is not said thrice. */
  private static List<Verdict> unexplained(List<Verdict> doubts) {
    Set<CaptureEntry> leaking =
        doubts.stream()
            .filter(v -> v.finding() == Finding.LOST_SEAL)
            .map(Verdict::capture)
            .collect(Collectors.toSet());
    return doubts.stream()
        .filter(v -> !(v.finding().followsFromLeak() && leaking.contains(v.capture())))
        .toList();
  }

  private static List<Verdict> doubts(Study study, List<AnchoredCapture> offered) {
    List<Verdict> doubts = new ArrayList<>(Completeness.of(offered));
    for (List<Group> groups : Group.byScale(study, offered)) {
      doubts.addAll(SealCheck.of(groups));
      doubts.addAll(OddSeating.of(groups));
      doubts.addAll(ChannelImbalance.of(groups));
      doubts.addAll(LevelJump.of(groups));
      doubts.addAll(NoiseCheck.of(groups));
    }
    return doubts;
  }

  /** The same with more findings that leave nothing out. */
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
