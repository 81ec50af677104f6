package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.RegionEquivalence;
import org.twinrig.internal.Numbers;

/** Where the mean difference is shown to make none, and how to read it. */
final class EquivalenceSheet {
  private EquivalenceSheet() {}

  static String howToRead(StudyOutcome outcome) {
    String limit = Numbers.fixed(outcome.study().settings().tolerance().equivalenceDb(), 1) + " dB";
    return "An interval that holds 0 does not show that the fixtures agree: it may only be wide. They"
        + " are shown to agree at a band when the mean difference lies within ± "
        + limit
        + " with at most "
        + Numbers.fixed(100 * (1 - outcome.study().settings().confidence()), 0)
        + " % chance of error (two one-sided tests); there the mean of old graphs needs no translation. A single"
        + " unit may still differ by what the marks say. At and near the anchor both fixtures agree"
        + " because every capture was pinned there.";
  }

  /** One sentence per kind, and one on whole regions. */
  static List<String> sentences(StudyOutcome outcome) {
    List<String> sentences = new ArrayList<>();
    outcome.kinds().forEach(k -> sentences.add(sentence(k.evidence().equivalence())));
    sentences.add(regions(outcome.regionEquivalence()));
    return sentences;
  }

  static String regions(List<RegionEquivalence> tested) {
    if (tested.isEmpty()) {
      return "No region could be tested as a whole: each has a band without an estimate.";
    }
    String shown =
        tested.stream()
            .filter(RegionEquivalence::shown)
            .map(
                r ->
                    r.kind()
                        + " from "
                        + Numbers.hertz(r.region().fromHz())
                        + " to "
                        + Numbers.hertz(r.region().toHz()))
            .collect(Collectors.joining("; "));
    return "Of "
        + Numbers.count(tested.size(), "whole region", "whole regions")
        + " tested together (Holm), "
        + (shown.isEmpty()
            ? "none is shown to agree throughout."
            : "agreement throughout is shown for " + shown + ".");
  }

  static String sentence(Equivalence equivalence) {
    String limit = " within ± " + Numbers.fixed(equivalence.limitDb(), 1) + " dB";
    if (equivalence.runs().isEmpty()) {
      return VerdictSentence.capital(equivalence.kind())
          + ": at no band is the mean difference shown to lie"
          + limit
          + " when all bands are looked at together.";
    }
    return VerdictSentence.capital(equivalence.kind())
        + ": over "
        + Numbers.fixed(equivalence.octavesTogether(), 1)
        + " octaves the mean difference is shown to lie"
        + limit
        + ", at all these bands at once.";
  }

  static Sheet of(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      Equivalence e = kind.evidence().equivalence();
      rows.add(
          List.of(
              Sheet.text(kind.kind()),
              Sheet.hundredths(e.octavesAlone()),
              Sheet.hundredths(e.octavesTogether()),
              Sheet.text(places(e.runs()))));
    }
    return new Sheet(
        "Where the mean of old graphs needs no translation",
        List.of(
            Sheet.names("Kind"),
            Sheet.numbers("Band by band (octaves)"),
            Sheet.numbers("All at once (octaves)"),
            Sheet.words("All at once, where")),
        rows);
  }

  private static String places(List<Equivalence.Run> runs) {
    return runs.isEmpty()
        ? "nowhere"
        : runs.stream()
            .map(r -> Numbers.hertz(r.fromHz()) + " to " + Numbers.hertz(r.toHz()))
            .collect(Collectors.joining("; "));
  }
}
