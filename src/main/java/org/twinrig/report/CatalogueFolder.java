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
import org.twinrig.report.figure.CapturesFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.CataloguePage;
import org.twinrig.report.table.CatalogueTables;
import org.twinrig.report.table.GraphFileNames;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** Everything a re-expressed catalogue writes: a table per graph, summary, report, run record. */
public final class CatalogueFolder {
  private final Path folder;
  private final Path graphs;
  private final Translation translation;
  private final GraphFileNames names;
  private final Path drawings;
  private final boolean figures;
  private final int threads;
  private final Set<String> exampleNames;
  private final Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();

  private static final int MOST_EXAMPLES = 4;

  /**
   * Starts a result folder.
   *
   * @param folder an empty folder
   * @param translation what is applied
   * @param entries the graphs to come
   * @param figures whether every graph is to be drawn
   * @param threads how many threads to draw on
   * @throws IOException when no folder can be made in it
   */
  public CatalogueFolder(
      Path folder,
      Translation translation,
      List<CatalogueEntry> entries,
      boolean figures,
      int threads)
      throws IOException {
    this.folder = folder;
    this.graphs = Files.createDirectory(folder.resolve("translated"));
    this.translation = translation;
    this.figures = figures;
    this.threads = threads;
    this.drawings = folder.resolve("figures");
    if (figures) {
      Files.createDirectory(drawings);
    }
    this.exampleNames = firstOfEachKind(entries);
    this.names = new GraphFileNames(entries.stream().map(CatalogueEntry::graph).toList());
  }

  /**
   * Keeps one graph. May be called from several threads at once.
   *
   * @param graph the graph
   * @throws IOException when it cannot be written
   */
  public void keep(TranslatedGraph graph) throws IOException {
    CatalogueTables.writeGraph(graph, graphs.resolve(names.of(graph.entry().graph()) + ".csv"));
    if (exampleNames.contains(graph.entry().graph())) {
      kept.put(graph.entry().graph(), graph);
    }
    if (figures) {
      Figure figure = GraphFigure.of(graph, fixtures(), fingerprint());
      String name = names.of(graph.entry().graph());
      Files.writeString(drawings.resolve(name + ".svg"), figure.svg(), StandardCharsets.UTF_8);
      Files.write(drawings.resolve(name + ".png"), figure.png());
    }
  }

  /** The kept examples, in the order of the catalogue. */
  private List<TranslatedGraph> examples() {
    return exampleNames.stream().filter(kept::containsKey).map(kept::get).toList();
  }

  private CapturesFigure.Fixtures fixtures() {
    return new CapturesFigure.Fixtures(translation.origin().from(), translation.origin().to());
  }

  private String fingerprint() {
    return translation.origin().fingerprint();
  }

  /** The first graph of each kind. */
  private static Set<String> firstOfEachKind(List<CatalogueEntry> entries) {
    Map<String, String> first = new LinkedHashMap<>();
    entries.forEach(e -> first.putIfAbsent(e.kind(), e.graph()));
    return new LinkedHashSet<>(first.values().stream().limit(MOST_EXAMPLES).toList());
  }

  /**
   * Writes the summary, the report and the run record.
   *
   * @param outcome what became of the catalogue
   * @param record of the run
   * @throws IOException when something cannot be written
   */
  public void finish(Findings<CatalogueRun.Outcome> outcome, RunRecord record) throws IOException {
    CatalogueTables.writeSummary(outcome.value(), folder.resolve("summary.csv"));
    List<Figure> drawn =
        Parallel.map(examples(), threads, g -> GraphFigure.of(g, fixtures(), fingerprint()));
    Files.writeString(
        folder.resolve("report.html"),
        CataloguePage.html(translation, outcome, drawn),
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
