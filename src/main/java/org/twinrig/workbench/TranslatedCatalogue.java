package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.Plate;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * Old graphs taken through the study as it stands in one snapshot.
 *
 * @param lines what became of each graph, in their order
 * @param graphs the first of them as they are now, by name
 * @param problems what was refused, and what the lab should know
 * @param doubts about the catalogue as a whole
 * @param drawn those that a page has shown
 */
public record TranslatedCatalogue(
    Snapshot snapshot,
    List<CatalogueRun.Line> lines,
    Map<String, TranslatedGraph> graphs,
    List<Problem> problems,
    List<Doubt> doubts,
    Map<String, List<Plate>> drawn) {

  /** So many graphs are kept whole, to be drawn and downloaded. */
  private static final int MOST_KEPT = 1000;

  private static final int MOST_DRAWN = 200;

  /** A graph as it is now, if it was kept: the first of them are. */
  public Optional<TranslatedGraph> graph(String name) {
    return Optional.ofNullable(graphs.get(name));
  }

  /** A graph drawn, when a page first shows it; nothing when it was not kept. */
  public List<Plate> plates(String name) {
    if (drawn.size() > MOST_DRAWN) {
      drawn.clear();
    }
    Translation by = snapshot.outcome().orElseThrow().translation();
    return graph(name)
        .map(
            g ->
                drawn.computeIfAbsent(
                    name, k -> Plate.of(List.of(GraphFigure.of(g, by.origin(), by.anchor())))))
        .orElse(List.of());
  }

  static TranslatedCatalogue ofStudy(Snapshot snapshot, Path catalogue, int threads, Work work)
      throws UnusableInput, IOException {
    String name = String.valueOf(catalogue.getFileName());
    return run(snapshot, catalogue, CatalogueReader.read(catalogue, name), threads, work);
  }

  /**
   * Takes files that were sent through the study, and deletes them.
   *
   * @param statement reads what was said of them
   */
  static TranslatedCatalogue ofUpload(
      Snapshot snapshot,
      Upload upload,
      Callable<Findings<CatalogueReader.Catalogue>> statement,
      int threads,
      Work work)
      throws Exception {
    try {
      Findings<CatalogueReader.Catalogue> read = statement.call();
      CatalogueReader.Catalogue placed =
          read.value().with(read.value().entries().stream().map(upload::placed).toList());
      Path table = upload.folder().resolve(Upload.STATEMENT);
      TranslatedCatalogue done =
          run(snapshot, table, new Findings<>(placed, read.problems()), threads, work);
      return new TranslatedCatalogue(
          snapshot,
          done.lines,
          done.graphs,
          done.problems.stream().map(p -> upload.named(p, placed)).toList(),
          done.doubts,
          done.drawn);
    } finally {
      upload.delete();
    }
  }

  private static TranslatedCatalogue run(
      Snapshot snapshot,
      Path table,
      Findings<CatalogueReader.Catalogue> catalogue,
      int threads,
      Work work)
      throws UnusableInput, IOException {
    StudyOutcome outcome = snapshot.estimated();
    work.expect(catalogue.value().entries().size());
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    CatalogueRun.Sink sink =
        (graph, came) -> {
          work.stopIfCancelled();
          if (kept.size() < MOST_KEPT) {
            kept.put(graph.entry().graph(), graph);
          }
          work.step();
        };
    Chain chain = Chain.of(outcome.link(threads));
    Findings<CatalogueRun.Outcome> done = chain.run(table, catalogue, threads, sink);
    Optional<Doubt> passed =
        chain.whole().origin().validityPassed(LocalDate.now(ZoneId.systemDefault()));
    return new TranslatedCatalogue(
        snapshot,
        done.value().lines(),
        kept,
        done.problems(),
        done.value().and(passed).doubts(),
        new ConcurrentHashMap<>());
  }
}
