package org.twinrig.report.html;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.html.Sheet.Cell;

/** The report of a comparison of studies, and its tables. */
public final class ComparisonPage {
  private ComparisonPage() {}

  /** One self-contained page; there is a drawing per kind and pair of studies. */
  public static String html(StudyComparison comparison, List<Figure> figures) {
    return Page.fill("comparison.jte", Map.of("comparison", comparison, "figures", figures));
  }

  /** What two studies are shown to be for a kind, in octaves. */
  public static Sheet<?> octaves(StudyComparison comparison) {
    return Sheet.of(
            "Octaves by what is shown of them, at all bands of a row at once",
            comparison.kinds().stream().flatMap(k -> k.pairs().stream()).toList())
        .names("Kind", p -> p.difference().kind())
        .words("First study", StudyComparison.Pair::first)
        .words("Second study", StudyComparison.Pair::second)
        .numbers(
            "Different", p -> octaves(p.difference().octaves(MeanDifference.Verdict::different)))
        .numbers(
            "Equivalent", p -> octaves(p.difference().octaves(MeanDifference.Verdict::equivalent)))
        .numbers("Neither", p -> octaves(ComparisonSentences.octavesNotShown(p.difference())));
  }

  private static Cell octaves(double octaves) {
    return Cell.ordered(Numbers.fixed(octaves, 1), octaves);
  }

  /**
   * All studies together, by kind and region; a region without a band in two studies is left out.
   */
  public static Sheet<?> combined(StudyComparison comparison) {
    record Inside(String kind, Region region, List<CombinedTransfer.Combined> bands) {}
    return Sheet.of(
            "All studies together, root mean square over the bands of a region",
            comparison.kinds().stream()
                .flatMap(
                    k ->
                        Stream.of(Region.values())
                            .map(r -> new Inside(k.kind(), r, inside(k.combined(), r))))
                .filter(i -> !i.bands().isEmpty())
                .toList())
        .names("Kind", Inside::kind)
        .regions(Inside::region)
        .hundredths(
            "Spread between studies (dB)",
            i -> StudyPage.rms(i.bands(), CombinedTransfer.Combined::tauDb))
        .hundredths(
            "Combined mean (± dB)",
            i -> StudyPage.rms(i.bands(), CombinedTransfer.Combined::halfDb))
        .hundredths(
            "A further lab's mean (± dB)",
            i -> StudyPage.rms(i.bands(), CombinedTransfer.Combined::furtherHalfDb));
  }

  private static List<CombinedTransfer.Combined> inside(CombinedTransfer combined, Region region) {
    return combined.bands().stream()
        .flatMap(Optional::stream)
        .filter(c -> region.holds(c.band()))
        .toList();
  }

  /** The studies by their fingerprints. */
  public static Sheet<?> studies(StudyComparison comparison) {
    return Sheet.of("The studies", comparison.studies())
        .words("Study", StudyComparison.Named::name)
        .names("Fingerprint", s -> s.outcome().fingerprint());
  }
}
