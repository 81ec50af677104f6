package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.DifferenceFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.html.ComparisonPage;
import org.twinrig.report.table.ComparisonResults;

/** What a comparison writes: tables, report, figures, the run record. */
public final class ComparisonFolder {
  private ComparisonFolder() {}

  /**
   * Writes them.
   *
   * @param folder an empty folder
   * @param comparison what was found
   * @param threads how many threads to draw on
   * @throws IOException when something cannot be written
   */
  public static void write(Path folder, StudyComparison comparison, RunRecord record, int threads)
      throws IOException {
    ComparisonResults.write(comparison, folder);
    List<Figure> figures = figures(comparison, threads);
    Path place = Files.createDirectories(folder.resolve("figures"));
    for (Figure figure : figures) {
      Files.writeString(
          place.resolve(figure.name() + ".svg"), figure.svg(), StandardCharsets.UTF_8);
      Files.write(place.resolve(figure.name() + ".png"), figure.png());
    }
    Files.writeString(
        folder.resolve("report.html"),
        ComparisonPage.html(comparison, figures),
        StandardCharsets.UTF_8);
    record.with(
        "studies",
        node -> comparison.studies().forEach(s -> node.put(s.name(), s.outcome().fingerprint())));
    record.lap("write");
    record.write(folder);
  }

  private static List<Figure> figures(StudyComparison comparison, int threads) {
    List<StudyComparison.Pair> pairs =
        comparison.kinds().stream().flatMap(k -> k.pairs().stream()).toList();
    return Parallel.map(pairs, threads, p -> DifferenceFigure.of(p, label(comparison, p)));
  }

  private static DifferenceFigure.Label label(
      StudyComparison comparison, StudyComparison.Pair pair) {
    List<String> names = comparison.studies().stream().map(StudyComparison.Named::name).toList();
    int first = names.indexOf(pair.first());
    int second = names.indexOf(pair.second());
    return new DifferenceFigure.Label(
        "-" + (first + 1) + "-" + (second + 1),
        comparison.studies().get(first).outcome().fingerprint()
            + " and "
            + comparison.studies().get(second).outcome().fingerprint());
  }
}
