package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.CataloguePage;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.report.table.GraphFileNames;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** Everything a re-expressed catalogue writes: a table per graph, summaries, report, run record. */
public final class CatalogueFolder implements CatalogueRun.Sink {
  private final Path folder;
  private final Path graphs;
  private final Translation translation;
  private final GraphFileNames names;
  private final Path drawings;
  private final Choices choices;
  private final Set<String> exampleNames;
  private final Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();

  private static final int MOST_EXAMPLES = 4;

  /**
   * How to write.
   *
   * @param figures whether every graph is to be drawn
   * @param threads how many threads to draw on
   */
  public record Choices(boolean figures, int threads) {}

  /**
   * Starts a result folder.
   *
   * @param folder an empty folder
   * @param translation what is applied
   * @param catalogue the graphs to come
   * @param choices how to write
   * @throws IOException when no folder can be made in it
   */
  public CatalogueFolder(
      Path folder, Translation translation, CatalogueReader.Catalogue catalogue, Choices choices)
      throws IOException {
    this.folder = folder;
    this.graphs = Files.createDirectories(folder.resolve("translated"));
    this.translation = translation;
    this.choices = choices;
    this.drawings = folder.resolve("figures");
    if (choices.figures()) {
      Files.createDirectories(drawings);
    }
    this.exampleNames = firstOfEachKind(catalogue.entries());
    this.names =
        new GraphFileNames(catalogue.entries().stream().map(CatalogueEntry::graph).toList());
  }

  @Override
  public void accept(TranslatedGraph graph) throws IOException {
    String name = names.of(graph.entry().graph());
    Files.writeString(
        graphs.resolve(name + ".csv"), CatalogueResults.GRAPH.csv(graph), StandardCharsets.UTF_8);
    if (choices.figures()) {
      Figure figure = GraphFigure.of(graph, translation.origin());
      Files.writeString(drawings.resolve(name + ".svg"), figure.svg(), StandardCharsets.UTF_8);
      Files.write(drawings.resolve(name + ".png"), figure.png());
    }
    if (exampleNames.contains(graph.entry().graph())) {
      kept.put(graph.entry().graph(), graph);
    }
  }

  /** The kept examples, in the order of the catalogue. */
  private List<TranslatedGraph> examples() {
    return exampleNames.stream().filter(kept::containsKey).map(kept::get).toList();
  }

  /** The first graph of each kind. */
  private static Set<String> firstOfEachKind(List<CatalogueEntry> entries) {
    Map<String, String> first = new LinkedHashMap<>();
    entries.forEach(e -> first.putIfAbsent(e.kind(), e.graph()));
    return new LinkedHashSet<>(first.values().stream().limit(MOST_EXAMPLES).toList());
  }

  /**
   * Writes the summaries, the report and the run record.
   *
   * @param outcome what became of the catalogue
   * @throws IOException when something cannot be written
   */
  public void finish(Findings<CatalogueRun.Outcome> outcome, RunRecord record) throws IOException {
    CatalogueResults.SUMMARY.write(folder, outcome.value());
    CatalogueResults.HANDLING.write(folder, outcome.value());
    CatalogueOverview overview = CatalogueOverview.of(translation, outcome.value());
    overview.write(folder);
    List<Figure> drawn =
        Parallel.map(examples(), choices.threads(), g -> GraphFigure.of(g, translation.origin()));
    Files.writeString(
        folder.resolve("report.html"),
        CataloguePage.html(translation, outcome, overview, drawn),
        StandardCharsets.UTF_8);
    record.with(
        "catalogue",
        node ->
            node.put("graphs", outcome.value().rows())
                .put("translated", outcome.value().lines().size())
                .put("refused", outcome.value().refused())
                .put("study_fingerprint", translation.origin().fingerprint()));
    record.lap("write");
    record.write(folder);
  }
}
