package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Pairing;
import org.twinrig.study.Study;

/**
 * Screens the captures of a study, and its units. What the lab left out is not judged and does not
 * count. A capture whose seal was lost is not also accused of being odd or of a jump in level.
 *
 * @param accepted the captures that count
 * @param verdicts what was found about captures, in the order of the captures
 * @param kinds what was found about the units of each kind, from the captures that count; units
 *     that are held out are not judged
 */
public record Screening(
    List<AnchoredCapture> accepted, List<Verdict> verdicts, List<KindScreening> kinds) {

  private static final Comparator<Verdict> IN_ORDER =
      Comparator.comparingInt((Verdict v) -> v.capture().line()).thenComparing(Verdict::finding);

  public Screening {
    accepted = List.copyOf(accepted);
    verdicts = List.copyOf(verdicts);
    kinds = List.copyOf(kinds);
  }

  /**
   * Screens captures and units.
   *
   * @return those that count and what was found; under {@link
   *     org.twinrig.study.ScreeningMode#SUGGEST} a verdict leaves nothing out but copies, under
   *     {@link org.twinrig.study.ScreeningMode#EXCLUDE} one whose finding is {@linkplain
   *     Finding#disbelieved() not to be believed} does
   */
  public static Screening of(Study study, List<AnchoredCapture> captures) {
    return of(study, captures, SameContent.of(offered(captures)));
  }

  /**
   * Screens the same captures anew after the shape of their curves was corrected, which hides
   * copies of one curve in several sessions from each other.
   *
   * @return what {@link #of} would give, had copies been looked for before
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
    List<Verdict> verdicts = new ArrayList<>();
    for (Verdict v : unexplained(doubts)) {
      verdicts.add(v.under(study.settings().screening()));
    }
    verdicts.sort(IN_ORDER);
    Set<CaptureEntry> out = new HashSet<>();
    verdicts.stream().filter(Verdict::excluded).forEach(v -> out.add(v.capture()));
    List<AnchoredCapture> accepted =
        offered.stream().filter(c -> !out.contains(c.capture().entry())).toList();
    List<KindScreening> kinds =
        new Pairing(study).pair(accepted, Unit.Role.FIT).stream().map(UnitOutliers::of).toList();
    return new Screening(accepted, verdicts, kinds);
  }

  /** The captures the lab did not leave out. */
  public static List<AnchoredCapture> offered(List<AnchoredCapture> captures) {
    return captures.stream().filter(c -> !c.capture().entry().excludedByLab()).toList();
  }

  /** A lost seal alone makes a seating odd and changes its level: that is not said thrice. */
  private static List<Verdict> unexplained(List<Verdict> doubts) {
    Set<CaptureEntry> leaking = new HashSet<>();
    doubts.stream()
        .filter(v -> v.finding() == Finding.LOST_SEAL)
        .forEach(v -> leaking.add(v.capture()));
    return doubts.stream()
        .filter(v -> !(v.finding().followsFromLeak() && leaking.contains(v.capture())))
        .toList();
  }

  private static List<Verdict> doubts(Study study, List<AnchoredCapture> offered) {
    List<Verdict> doubts = new ArrayList<>(Completeness.of(offered));
    for (List<Group> groups : Group.byScale(study, offered)) {
      doubts.addAll(SealCheck.of(groups));
      doubts.addAll(OddSeating.of(groups));
      doubts.addAll(SideImbalance.of(groups));
      doubts.addAll(LevelJump.of(groups));
      doubts.addAll(NoiseCheck.of(groups));
    }
    return doubts;
  }

  /**
   * The same with more findings that leave nothing out.
   *
   * @param more verdicts of which none excludes its capture
   * @throws IllegalArgumentException when one excludes its capture
   */
  public Screening with(List<Verdict> more) {
    if (more.stream().anyMatch(Verdict::excluded)) {
      throw new IllegalArgumentException("a capture cannot be left out after screening");
    }
    List<Verdict> all = new ArrayList<>(verdicts);
    all.addAll(more);
    all.sort(IN_ORDER);
    return new Screening(accepted, all, kinds);
  }
}
