package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.problem.Findings;
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
