package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;
import org.twinrig.report.figure.Figure;

/** The report of a comparison of studies. */
public final class ComparisonPage {
  private ComparisonPage() {}

  /**
   * What stands in words at its head.
   *
   * @param lead what is compared
   * @param verdicts one per kind and two studies
   * @param remarks what holds beside them
   */
  public record Findings(String lead, List<String> verdicts, List<String> remarks) {
    /** Copies the lists. */
    public Findings {
      verdicts = List.copyOf(verdicts);
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * Writes the report.
   *
   * @param comparison what was found
   * @param findings the same in words
   * @param figures its drawings
   * @return one self-contained page
   */
  public static String html(StudyComparison comparison, Findings findings, List<Figure> figures) {
    return Page.fill(
        "comparison.jte",
        new ComparisonView(
            "Study against study",
            findings.lead,
            findings.verdicts,
            findings.remarks,
            octaves(comparison),
            Plate.of(figures),
            combined(comparison),
            method(comparison),
            studies(comparison),
            Cautions.all()));
  }

  private static Sheet octaves(StudyComparison comparison) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (StudyComparison.Pair pair : kind.pairs()) {
        MeanDifference d = pair.difference();
        rows.add(
            List.of(
                Sheet.text(kind.kind()),
                Sheet.text(pair.first()),
                Sheet.text(pair.second()),
                octaves(d.octaves(MeanDifference.Verdict::different)),
                octaves(d.octaves(MeanDifference.Verdict::equivalent)),
                octaves(d.octaves(v -> !v.different() && !v.equivalent()))));
      }
    }
    return new Sheet(
        "Octaves by what is shown of them, at all bands of a row at once",
        List.of(
            Sheet.names("Kind"),
            Sheet.words("First study"),
            Sheet.words("Second study"),
            Sheet.numbers("Different"),
            Sheet.numbers("Equivalent"),
            Sheet.numbers("Neither")),
        rows);
  }

  private static Sheet.Cell octaves(double octaves) {
    return Sheet.ordered(Numbers.fixed(octaves, 1), octaves);
  }

  private static Sheet combined(StudyComparison comparison) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (Region region : Region.values()) {
        List<CombinedTransfer.Combined> inside =
            kind.combined().bands().stream()
                .flatMap(Optional::stream)
                .filter(c -> region.holds(c.band()))
                .toList();
        if (!inside.isEmpty()) {
          rows.add(
              List.of(
                  Sheet.text(kind.kind()),
                  Sheet.ordered(region.word(), region.fromHz()),
                  Sheet.hundredths(rms(inside, CombinedTransfer.Combined::tauDb)),
                  Sheet.hundredths(rms(inside, CombinedTransfer.Combined::halfDb)),
                  Sheet.hundredths(rms(inside, CombinedTransfer.Combined::furtherHalfDb))));
        }
      }
    }
    return new Sheet(
        "All studies together, root mean square over the bands of a region",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Region"),
            Sheet.numbers("Spread between studies (dB)"),
            Sheet.numbers("Combined mean (± dB)"),
            Sheet.numbers("A further lab's mean (± dB)")),
        rows);
  }

  private static double rms(
      List<CombinedTransfer.Combined> bands, ToDoubleFunction<CombinedTransfer.Combined> value) {
    return Math.sqrt(bands.stream().mapToDouble(value).map(v -> v * v).average().orElseThrow());
  }

  private static List<String> method(StudyComparison comparison) {
    var settings = comparison.studies().get(0).outcome().study().settings();
    String percent = Numbers.fixed(100 * settings.confidence(), 0) + " %";
    return List.of(
        "The difference of two mean transfers has the " + percent + " interval of Welch (1947).",
        "The interval of all bands at once flips the signs of whole units in either study apart and"
            + " takes the greatest |t| over the bands; it is never wider than Bonferroni's. Means are"
            + " called different where it leaves out 0.",
        "They are called equivalent where it lies within ± "
            + Numbers.fixed(settings.tolerance().equivalenceDb(), 2)
            + " dB. Where neither is shown, more units would tell.",
        "The combined transfer is a random-effects mean over studies: variance between studies by"
            + " restricted maximum likelihood, standard error after Hartung and Knapp but never below"
            + " the model's own (Röver, Knapp and Friede 2015), Student's t with one degree of freedom"
            + " less than studies.",
        "A further lab's mean is expected within t times the root of the variance between studies and"
            + " the squared standard error.",
        "Studies are taken as independent; every kind and pair of studies is judged by itself.");
  }

  private static Sheet studies(StudyComparison comparison) {
    return new Sheet(
        "The studies",
        List.of(Sheet.words("Study"), Sheet.names("Fingerprint")),
        comparison.studies().stream()
            .map(s -> List.of(Sheet.text(s.name()), Sheet.text(s.outcome().fingerprint())))
            .toList());
  }
}
