package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.analysis.ScreeningEffect;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.Finding;
import org.twinrig.screening.KindScreening;
import org.twinrig.screening.UnitVerdict;
import org.twinrig.screening.Verdict;
import org.twinrig.study.ScreeningMode;

/** What screening found, in sentences. */
final class ScreeningWords {
  private ScreeningWords() {}

  static StudyView.Screened view(StudyOutcome outcome) {
    return new StudyView.Screened(
        lead(outcome), rules(), effects(outcome), units(outcome), ScreenedSheet.of(outcome));
  }

  static String lead(StudyOutcome outcome) {
    List<Verdict> verdicts = outcome.screening().verdicts();
    long doubted = verdicts.stream().map(Verdict::capture).distinct().count();
    long out = verdicts.stream().filter(Verdict::excluded).map(Verdict::capture).distinct().count();
    long byLab = outcome.study().leftOutByLab();
    if (doubted + byLab == 0) {
      return "No capture was doubted and none was left out.";
    }
    return "The rules doubt "
        + Numbers.count(doubted, "capture", "captures")
        + findings(verdicts)
        + " and left out "
        + out
        + "; the lab left out "
        + byLab
        + ". Nothing was deleted: every file is still in its place."
        + (outcome.study().settings().screening() == ScreeningMode.SUGGEST
            ? " The study only suggests: what the rules doubt was used, but a curve that several rows"
                + " give counts once."
            : "");
  }

  /** How often each finding was made. */
  private static String findings(List<Verdict> verdicts) {
    if (verdicts.isEmpty()) {
      return "";
    }
    return Arrays.stream(Finding.values())
        .filter(f -> verdicts.stream().anyMatch(v -> v.finding() == f))
        .map(f -> f.word() + " " + verdicts.stream().filter(v -> v.finding() == f).count())
        .collect(Collectors.joining(", ", " (", ")"));
  }

  /** Which findings may leave a capture out. */
  static String rules() {
    return "Every capture is compared with the unit's others on the same fixture and with how far"
        + " seatings of its kind scatter there. Where the study says so (screening: apply: exclude),"
        + " the rules leave out captures they do not believe: "
        + words(true)
        + ". A curve that several rows give counts once in every study. All other findings are only reported: "
        + words(false)
        + ". A unit that departs from its kind is never left out by a rule, for it may show what the"
        + " kind is really like.";
  }

  private static String words(boolean disbelieved) {
    return Arrays.stream(Finding.values())
        .filter(f -> f.disbelieved() == disbelieved)
        .map(Finding::word)
        .collect(Collectors.joining(", "));
  }

  static List<String> effects(StudyOutcome outcome) {
    boolean used = outcome.study().settings().screening() == ScreeningMode.SUGGEST;
    return ScreeningEffect.of(outcome).stream().map(e -> effect(e, used)).toList();
  }

  static String effect(ScreeningEffect effect, boolean used) {
    String captures =
        Numbers.count(
            effect.captures(),
            "capture that the rules do not believe",
            "captures that the rules do not believe");
    String start = effect.kind() + ": " + (used ? "using the " : "leaving out the ") + captures;
    return effect
        .largest()
        .map(c -> start + moved(used ? -c.changeDb() : c.changeDb(), c.bandHz()))
        .orElse(
            start
                + " decides whether there is a mean transfer at all: without them, units are too few.");
  }

  private static String moved(double changeDb, double bandHz) {
    String size = Numbers.fixed(Math.abs(changeDb), 1);
    return size.equals("0.0")
        ? " moves the mean transfer nowhere by as much as 0.1 dB."
        : " moves the mean transfer by at most "
            + size
            + " dB ("
            + (changeDb > 0 ? "up" : "down")
            + ", at "
            + Numbers.hertz(bandHz)
            + ").";
  }

  /** What was found about units, and of which kinds nothing can be said. */
  static List<String> units(StudyOutcome outcome) {
    List<String> lines = new ArrayList<>();
    for (KindScreening kind : outcome.screening().kinds()) {
      kind.notJudged().ifPresent(why -> lines.add(kind.kind() + ": " + why + "."));
      for (UnitVerdict v : kind.verdicts()) {
        lines.add(kind.kind() + ": " + v.unit() + ", " + v.sentence() + ".");
      }
      if (kind.notJudged().isEmpty() && kind.verdicts().isEmpty()) {
        lines.add(
            kind.kind()
                + ": none of the "
                + Numbers.count(kind.units(), "unit", "units")
                + " departs from the others by more than chance explains.");
      }
    }
    return lines;
  }
}
