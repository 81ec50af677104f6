package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Answers;
import org.twinrig.doubt.Doubt;
import org.twinrig.intake.MendedTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.Plate;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * Old graphs taken through the study as it stands in one snapshot.
 *
 * @param run counts what was done since the workbench was opened
 * @param table the catalogue as it was read; nothing where files were sent
 * @param lines what became of each graph, in their order
 * @param graphs the first of them as they are now, by name
 * @param problems what was refused, and what the lab should know
 * @param doubts about the catalogue as a whole, which are not of single graphs
 * @param drawn those that a page has shown
 */
public record TranslatedCatalogue(
    Snapshot snapshot,
    long run,
    Optional<LabFile> table,
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
    // Looked at before it is read: whatever changes in between is noticed as a change.
    LabFile table = LabFile.read(catalogue.toRealPath());
    TranslatedCatalogue done =
        run(snapshot, catalogue, CatalogueReader.read(catalogue, name), threads, work);
    return new TranslatedCatalogue(
        snapshot,
        done.run,
        Optional.of(table),
        done.lines,
        done.graphs,
        done.problems,
        done.doubts,
        done.drawn);
  }

  /** The doubts about graphs, open and answered, by their causes. */
  public List<Cause> causes() {
    return Cause.of(lines.stream().flatMap(l -> l.doubts().stream()).toList());
  }

  /**
   * Writes a reason into the rows of doubted graphs, or with an empty one opens the doubts again.
   *
   * @throws RefusedException when the table is no longer what was read
   */
  void answer(List<Doubt> about, String reason)
      throws RefusedException, UnusableInput, IOException {
    if (table.isEmpty()) {
      throw Request.unusable(
          "these graphs were sent, and have no table that an answer could be written to",
          "write the column `confirmed` into the catalogue.csv that you send along");
    }
    Map<String, CatalogueEntry> rows =
        lines.stream()
            .map(CatalogueRun.Line::entry)
            .collect(Collectors.toMap(CatalogueEntry::graph, e -> e));
    SortedMap<Integer, String> cells = new TreeMap<>();
    for (Doubt doubt : about) {
      CatalogueEntry row = Objects.requireNonNull(rows.get(doubt.name()), "a graph of a line");
      String cell = cells.getOrDefault(row.line(), row.confirmed());
      cells.put(row.line(), Answers.changed(cell, doubt.doubt(), reason));
    }
    table
        .get()
        .replace(MendedTable.with(table.get().bytes(), table.get().name(), "confirmed", cells));
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
          done.run,
          Optional.empty(),
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
        work.id,
        Optional.empty(),
        done.value().lines(),
        kept,
        done.problems(),
        done.value().and(passed).doubts().stream()
            .filter(d -> d.subject() != Doubt.Subject.GRAPH)
            .toList(),
        new ConcurrentHashMap<>());
  }
}
