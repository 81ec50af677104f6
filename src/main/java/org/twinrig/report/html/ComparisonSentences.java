package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.internal.Numbers;
import org.twinrig.study.FrequencyRange;

/** What a comparison of studies found, in sentences for page and terminal. */
public final class ComparisonSentences {
  private static final int FEW_STUDIES = 5;

  private ComparisonSentences() {}

  /** What is compared. */
  public static String lead(StudyComparison comparison) {
    var study = comparison.studies().get(0).outcome().study();
    return Numbers.count(comparison.studies().size(), "study", "studies")
        + " from "
        + study.from().label()
        + " to "
        + study.to().label()
        + ": "
        + comparison.studies().stream()
            .map(StudyComparison.Named::name)
            .collect(Collectors.joining("; "))
        + ".";
  }

  /** What two studies come to for a kind. */
  public static String verdict(StudyComparison.Pair pair) {
    MeanDifference d = pair.difference();
    String alike = "equivalent within " + Numbers.fixed(d.limitDb(), 2) + " dB";
    return String.format(
        Locale.ROOT,
        "%s, %s (n = %d) against %s (n = %d): %s; %s; over the other %s octaves nothing is"
            + " shown.%s%s",
        d.kind(),
        pair.first(),
        pair.units().first(),
        pair.second(),
        pair.units().second(),
        found(d, MeanDifference.Verdict::different, "different"),
        found(d, MeanDifference.Verdict::equivalent, alike),
        Numbers.fixed(octavesNotShown(d), 1),
        d.largest().map(ComparisonSentences::most).orElse(""),
        pair.shared() == 0
            ? ""
            : " "
                + Numbers.count(pair.shared(), "unit has", "units have")
                + " the same name in both: if they are the same specimens, the studies are surer of"
                + " their difference than is said here.");
  }

  private static String most(MeanDifference.Verdict v) {
    return String.format(
        Locale.ROOT,
        " The means differ most at %s, by %s ± %s dB.",
        Numbers.hertz(v.band().midHz()),
        Numbers.fixed(v.differenceDb(), 1),
        Numbers.fixed(v.simultaneousHalfDb(), 1));
  }

  /** Octaves in which two means are shown neither to differ nor to be equivalent. */
  public static double octavesNotShown(MeanDifference d) {
    return d.octaves(v -> !v.different() && !v.equivalent());
  }

  private static String found(
      MeanDifference d, Predicate<MeanDifference.Verdict> what, String word) {
    List<FrequencyRange> runs = d.runs(what);
    return runs.isEmpty()
        ? "nowhere shown to be " + word
        : "shown to be "
            + word
            + " over "
            + Numbers.fixed(d.octaves(what), 1)
            + " octaves ("
            + Texts.ranges(runs, ", ")
            + ")";
  }

  /** What holds beside the verdicts. */
  public static List<String> remarks(StudyComparison comparison) {
    List<String> lines = new ArrayList<>();
    comparison
        .lonely()
        .forEach((kind, study) -> lines.add(kind + " is found in " + study + " only."));
    int most =
        comparison.kinds().stream()
            .flatMap(k -> k.combined().bands().stream())
            .flatMap(Optional::stream)
            .mapToInt(CombinedTransfer.Combined::studies)
            .max()
            .orElse(0);
    if (most == 2) {
      lines.add(
          "Two studies say next to nothing about how far labs differ: the spread between labs rests"
              + " on one difference, and the intervals of the combined transfer are wide for it.");
    } else if (most > 2 && most < FEW_STUDIES) {
      lines.add(
          "With "
              + most
              + " studies the spread between labs is known to an order of magnitude, no more.");
    }
    lines.add(
        "Different and equivalent hold for all bands of a kind and pair of studies at once; at and"
            + " near the anchor levels were made equal.");
    return lines;
  }
}
