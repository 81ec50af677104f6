package org.twinrig.report.html;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.evidence.Region;
import org.twinrig.report.figure.Figure;

/** The report of a comparison of studies, and the rows of its tables. */
public final class ComparisonPage {
  private ComparisonPage() {}

  /** One self-contained page; there is a drawing per kind and pair of studies. */
  public static String html(StudyComparison comparison, List<Figure> figures) {
    return Page.fill("comparison.jte", Map.of("comparison", comparison, "figures", figures));
  }

  public static List<StudyComparison.Pair> pairs(StudyComparison comparison) {
    return comparison.kinds().stream().flatMap(k -> k.pairs().stream()).toList();
  }

  /** The combined transfer of a kind inside a region: at least one band. */
  public record Together(String kind, Region region, List<CombinedTransfer.Combined> bands) {}

  /** All studies together; a region without a band in two studies is left out. */
  public static List<Together> combined(StudyComparison comparison) {
    return comparison.kinds().stream()
        .flatMap(
            k ->
                Stream.of(Region.values())
                    .map(r -> new Together(k.kind(), r, inside(k.combined(), r))))
        .filter(t -> !t.bands().isEmpty())
        .toList();
  }

  private static List<CombinedTransfer.Combined> inside(CombinedTransfer combined, Region region) {
    return combined.bands().stream()
        .flatMap(Optional::stream)
        .filter(c -> region.holds(c.band()))
        .toList();
  }

  public static double midHz(MeanDifference.Verdict verdict) {
    return verdict.band().midHz();
  }

  /** Octaves in which two means are shown neither to differ nor to be equivalent. */
  public static double octavesNotShown(MeanDifference d) {
    return d.octaves(v -> !v.different() && !v.equivalent());
  }

  /** What holds beside the verdicts. */
  public static List<String> remarks(StudyComparison comparison) {
    int most =
        comparison.kinds().stream()
            .flatMap(k -> k.combined().bands().stream())
            .flatMap(Optional::stream)
            .mapToInt(CombinedTransfer.Combined::studies)
            .max()
            .orElse(0);
    return Page.lines(
        "comparison/remarks.jte", Map.of("lonely", comparison.lonely(), "most", most));
  }
}
