package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.DifferenceFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.html.ComparisonPage;
import org.twinrig.report.html.Page;
import org.twinrig.report.table.ComparisonResults;

/** What a comparison of studies found. */
public record ComparisonReport(StudyComparison comparison) implements Report {
  @Override
  public List<String> sentences(Optional<Path> results) {
    return Page.lines(
        "terminal/comparison.jte",
        Map.of("comparison", comparison, "report", Report.page(results)));
  }

  @Override
  public String json(Optional<Path> results) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    ArrayNode studies = root.putArray("studies");
    for (StudyComparison.Named study : comparison.studies()) {
      studies
          .addObject()
          .put("name", study.name())
          .put("fingerprint", study.outcome().fingerprint());
    }
    ArrayNode pairs = root.putArray("pairs");
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (StudyComparison.Pair pair : kind.pairs()) {
        ObjectNode node =
            pairs
                .addObject()
                .put("kind", kind.kind())
                .put("first", pair.first())
                .put("second", pair.second())
                .put("equivalence_db", pair.difference().limitDb())
                .put("confidence", pair.difference().confidence());
        put(node.putArray("different"), pair, MeanDifference.Verdict::different);
        put(node.putArray("equivalent"), pair, MeanDifference.Verdict::equivalent);
      }
    }
    ArrayNode lonely = root.putArray("kinds_in_one_study");
    comparison
        .lonely()
        .forEach((kind, study) -> lonely.addObject().put("kind", kind).put("study", study));
    return root.toPrettyString();
  }

  private static void put(
      ArrayNode runs, StudyComparison.Pair pair, Predicate<MeanDifference.Verdict> what) {
    pair.difference()
        .runs(what)
        .forEach(r -> runs.addObject().put("from_hz", r.fromHz()).put("to_hz", r.toHz()));
  }

  @Override
  public void write(Path folder, RunRecord record, int threads) throws IOException {
    ComparisonResults.write(comparison, folder);
    List<Figure> figures = Parallel.map(ComparisonPage.pairs(comparison), threads, this::figure);
    Figure.write(folder, figures, threads);
    Files.writeString(folder.resolve("report.html"), ComparisonPage.html(comparison, figures));
    record.with(
        "studies",
        node -> comparison.studies().forEach(s -> node.put(s.name(), s.outcome().fingerprint())));
    record.lap("write");
    record.write(folder);
  }

  private Figure figure(StudyComparison.Pair pair) {
    List<String> names = comparison.studies().stream().map(StudyComparison.Named::name).toList();
    int first = names.indexOf(pair.first());
    int second = names.indexOf(pair.second());
    return DifferenceFigure.of(
        pair,
        "-" + (first + 1) + "-" + (second + 1),
        comparison.studies().get(first).outcome().fingerprint()
            + " and "
            + comparison.studies().get(second).outcome().fingerprint());
  }
}
