package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.BandBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.Verdict;

/**
 * What a study's report counts, lists and words by rules; the prose around it is the template's.
 */
public final class StudySentences {
  private StudySentences() {}

  public static int unitsOnBoth(StudyOutcome outcome) {
    return outcome.kinds().stream().mapToInt(k -> k.paired().units().size()).sum();
  }

  /** How many units are listed, and what became of those no estimate rests on. */
  public static String units(StudyOutcome outcome) {
    List<Unit> listed = outcome.study().units();
    int least = outcome.study().settings().minUnits();
    int few =
        outcome.kinds().stream()
            .mapToInt(k -> k.paired().units().size())
            .filter(n -> n < least)
            .sum();
    int fitted = unitsOnBoth(outcome) - few;
    long heldOut = count(listed, Unit.Role.HOLDOUT);
    long check = count(listed, Unit.Role.CHECK);
    long lacking = count(listed, Unit.Role.FIT) - fitted - few;
    String ofSmall = " of kinds with fewer than " + least;
    String capture = " a usable capture on a fixture";
    String others =
        Stream.of(
                part(heldOut, "is held out", "are held out"),
                part(check, "is for checks only", "are for checks only"),
                part(few, "is" + ofSmall, "are" + ofSmall),
                part(lacking, "lacks" + capture, "lack" + capture))
            .flatMap(Optional::stream)
            .collect(Collectors.joining(", "));
    return "Of "
        + Numbers.count(listed.size(), "unit", "units")
        + " listed, "
        + (others.isEmpty()
            ? "every one enters the estimates."
            : Numbers.count(fitted, "enters", "enter") + " the estimates; " + others + ".");
  }

  private static Optional<String> part(long number, String one, String many) {
    return number <= 0 ? Optional.empty() : Optional.of(Numbers.count(number, one, many));
  }

  private static long count(List<Unit> units, Unit.Role role) {
    return units.stream().filter(u -> u.role() == role).count();
  }

  /** How wide the bands of a kind are together that are as said, in octaves. */
  public static double octaves(KindOutcome kind, Predicate<MarkedBand> which) {
    return kind.transfer().bands().stream()
        .filter(which)
        .mapToDouble(b -> b.band().octaves())
        .sum();
  }

  /** How many units left out stayed inside their interval at every band, kind by kind. */
  public static String wholeCurves(StudyOutcome outcome) {
    List<String> kinds = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      double[] inside =
          kind.evidence().leftOut().ofUnits(Optional.empty()).stream()
              .flatMapToDouble(u -> u.inside().stream())
              .toArray();
      if (inside.length > 0) {
        long whole = Arrays.stream(inside).filter(share -> share == 1).count();
        kinds.add(whole + " of " + inside.length + " (" + kind.kind() + ")");
      }
    }
    return kinds.isEmpty() ? "too few units to tell" : Texts.joined(kinds);
  }

  public static List<String> heldOut(StudyOutcome outcome) {
    return outcome.study().units().stream()
        .filter(u -> u.role() == Unit.Role.HOLDOUT)
        .map(Unit::name)
        .toList();
  }

  /** Those that could not be predicted and compared with their captures. */
  public static List<String> notJudged(StudyOutcome outcome) {
    Set<String> judged = new HashSet<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence().heldOut().ofUnits(Optional.empty()).forEach(u -> judged.add(u.unit()));
    }
    return heldOut(outcome).stream().filter(u -> !judged.contains(u)).toList();
  }

  /** The expanded uncertainties of the Monte Carlo run as shares of the budget's. */
  public static DoubleSummaryStatistics expanded(List<BandBudget> checked) {
    return checked.stream()
        .mapToDouble(
            b -> b.monteCarlo().orElseThrow().expandedDb() / b.total().orElseThrow().expanded())
        .summaryStatistics();
  }

  public static long doubted(StudyOutcome outcome) {
    return captures(outcome, v -> true);
  }

  public static long leftOut(StudyOutcome outcome) {
    return captures(outcome, Verdict::excluded);
  }

  private static long captures(StudyOutcome outcome, Predicate<Verdict> which) {
    return outcome.screening().verdicts().stream()
        .filter(which)
        .map(Verdict::capture)
        .distinct()
        .count();
  }

  /** Sessions with the same charts outside and the same limit, which share a sentence. */
  public static Collection<List<FixtureDrift.OutOfControl>> outOfControl(FixtureDrift fixture) {
    return fixture.outOfControl().stream()
        .collect(
            Collectors.groupingBy(
                o -> List.of(o.charts(), o.worst(), Numbers.fixed(o.limitDb(), 2)),
                LinkedHashMap::new,
                Collectors.toList()))
        .values();
  }
}
