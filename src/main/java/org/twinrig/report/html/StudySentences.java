package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
import org.twinrig.reliability.Zone;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.Finding;
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

  public static double octavesWithoutData(KindOutcome kind) {
    return octaves(kind, MarkedBand::empty);
  }

  /** Octaves of the whole axis, with data or without. */
  public static double octaves(KindOutcome kind) {
    return octaves(kind, band -> true);
  }

  private static double octaves(KindOutcome kind, Predicate<MarkedBand> which) {
    return kind.transfer().bands().stream()
        .filter(which)
        .mapToDouble(b -> b.band().octaves())
        .sum();
  }

  /** The first reason why a kind does not translate. */
  public static String firstReason(KindOutcome kind) {
    // Bands beyond the captures are no reason: exports that begin at 20 Hz lack the lowest.
    return kind.zones().stream()
        .filter(zone -> !zone.empty())
        .map(Zone::reasons)
        .flatMap(List::stream)
        .sorted()
        .findFirst()
        .map(r -> r.plain())
        .orElse("nothing was measured");
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

  /** What the Monte Carlo run says of the budget of a kind. */
  public static String check(KindOutcome kind) {
    List<BandBudget> checked =
        kind.budget().bands().stream().filter(b -> b.monteCarlo().isPresent()).toList();
    if (checked.isEmpty()) {
      return "no band has a combined uncertainty to check.";
    }
    long agree = checked.stream().filter(b -> b.monteCarlo().orElseThrow().agrees()).count();
    double least = checked.stream().mapToDouble(StudySentences::expanded).min().orElseThrow();
    double most = checked.stream().mapToDouble(StudySentences::expanded).max().orElseThrow();
    boolean deviations =
        checked.stream()
            .allMatch(b -> b.monteCarlo().orElseThrow().standardDeviationDb().isPresent());
    return String.format(
            Locale.ROOT,
            "with %,d draws a band, one band per octave, a Monte Carlo run after JCGM 101 agrees in"
                + " %d of %s to one significant digit of the combined uncertainty; its expanded"
                + " uncertainty is between %s %% and %s %% of the budget's.",
            kind.budget().trials(),
            agree,
            Numbers.count(checked.size(), "band", "bands"),
            Texts.percent(least),
            Texts.percent(most))
        + (deviations
            ? ""
            : " With so few units or repeats the distribution has no standard deviation; only the"
                + " intervals are compared.");
  }

  /** The expanded uncertainty of the Monte Carlo run, as a share of the budget's. */
  private static double expanded(BandBudget band) {
    return band.monteCarlo().orElseThrow().expandedDb() / band.total().orElseThrow().expanded();
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

  /** How often each finding was made; empty when none was. */
  public static String findings(StudyOutcome outcome) {
    List<Verdict> verdicts = outcome.screening().verdicts();
    return Arrays.stream(Finding.values())
        .filter(f -> verdicts.stream().anyMatch(v -> v.finding() == f))
        .map(f -> f.word() + " " + verdicts.stream().filter(v -> v.finding() == f).count())
        .collect(Collectors.joining(", "));
  }

  /** The findings by which rules do or do not leave captures out. */
  public static String findings(boolean disbelieved) {
    return Arrays.stream(Finding.values())
        .filter(f -> f.disbelieved() == disbelieved)
        .map(Finding::word)
        .collect(Collectors.joining(", "));
  }

  /** Sessions with the same charts outside and the same limit share a sentence. */
  public static List<String> outOfControl(FixtureDrift fixture) {
    Map<String, List<String>> sessions = new LinkedHashMap<>();
    for (FixtureDrift.OutOfControl o : fixture.outOfControl()) {
      String how =
          "out of control by "
              + o.charts().stream().map(StudySentences::chart).collect(Collectors.joining(", "))
              + (o.charts().size() > 1 ? "; farthest out is " + chart(o.worst()) : "")
              + "; at most "
              + Numbers.fixed(o.limitDb(), 2)
              + " dB from the middle is allowed.";
      sessions
          .computeIfAbsent(how, h -> new ArrayList<>())
          .add(o.session() + " (" + Numbers.against(o.departureDb(), o.limitDb(), 2) + " dB)");
    }
    return sessions.entrySet().stream()
        .map(
            e ->
                fixture.label()
                    + ": "
                    + String.join(", ", e.getValue())
                    + (e.getValue().size() == 1 ? " is " : " are ")
                    + e.getKey())
        .toList();
  }

  private static String chart(DriftChart chart) {
    return (chart.band().isEmpty() ? "the " : "") + chart.words();
  }
}
