package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
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
    StringBuilder text = new StringBuilder(d.kind());
    text.append(", ").append(pair.first()).append(" (n = ").append(pair.units().first());
    text.append(") against ").append(pair.second());
    text.append(" (n = ").append(pair.units().second()).append("): ");
    text.append(found(d, MeanDifference.Verdict::different, "different"));
    text.append("; ");
    text.append(
        found(
            d,
            MeanDifference.Verdict::equivalent,
            "equivalent within " + Numbers.fixed(d.limitDb(), 2) + " dB"));
    text.append("; over the other ")
        .append(Numbers.fixed(octavesNotShown(d), 1))
        .append(" octaves nothing is shown.");
    d.largest()
        .ifPresent(
            v ->
                text.append(" The means differ most at ")
                    .append(Numbers.hertz(v.band().midHz()))
                    .append(", by ")
                    .append(Numbers.fixed(v.differenceDb(), 1))
                    .append(" ± ")
                    .append(Numbers.fixed(v.simultaneousHalfDb(), 1))
                    .append(" dB."));
    if (pair.shared() > 0) {
      text.append(' ')
          .append(Numbers.count(pair.shared(), "unit has", "units have"))
          .append(
              " the same name in both: if they are the same specimens, the studies are surer of"
                  + " their difference than is said here.");
    }
    return text.toString();
  }

  /** Octaves in which two means are shown neither to differ nor to be equivalent. */
  static double octavesNotShown(MeanDifference d) {
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
            + runs.stream()
                .map(r -> Texts.range(r.fromHz(), r.toHz()))
                .collect(Collectors.joining(", "))
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
