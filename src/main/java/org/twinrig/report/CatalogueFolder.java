package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.internal.Parallel;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.Findings;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.CataloguePage;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.report.table.CatalogueTables;
import org.twinrig.report.table.GraphFileNames;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * Everything a re-expressed catalogue writes: a table per graph, summaries, report, run record. A
 * graph an earlier run finished is taken from there when its files still have the SHA-256 they were
 * written with.
 */
public final class CatalogueFolder implements CatalogueRun.Sink, AutoCloseable {
  private final Path folder;
  private final Path graphs;
  private final Translation translation;
  private final GraphFileNames names;
  private final Path drawings;
  private final Choices choices;
  private final GraphJournal journal;
  private final Set<String> exampleNames;
  private final Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();

  private static final int MOST_EXAMPLES = 4;

  /**
   * How to write.
   *
   * @param figures whether every graph is to be drawn
   * @param threads how many threads to draw on
   * @param identity of the run: only graphs finished under the same are not done again
   */
  public record Choices(boolean figures, int threads, String identity) {}

  /**
   * Starts a result folder.
   *
   * @param folder an empty folder, or one an earlier run did not finish
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
    this.names = new GraphFileNames(catalogue.graphs());
    this.journal = GraphJournal.in(folder, choices.identity());
  }

  @Override
  public Optional<Findings<CatalogueRun.Line>> finished(CatalogueEntry entry, Path file)
      throws IOException {
    if (exampleNames.contains(entry.graph())) {
      return Optional.empty(); // the report draws it: it is needed whole
    }
    Optional<GraphJournal.Finished> found = journal.finished(entry);
    if (found.isEmpty()
        || !found.get().line().value().sha256().startsWith(Sha256.hex(file))
        || !found.get().files().equals(written(names.of(entry.graph())))) {
      return Optional.empty();
    }
    return found.map(GraphJournal.Finished::line);
  }

  /** SHA-256 of what lies in the folder for a graph; empty when some of it is missing. */
  private String written(String name) throws IOException {
    try {
      String table = Sha256.hex(graphs.resolve(name + ".csv"));
      return choices.figures()
          ? table
              + Sha256.hex(drawings.resolve(name + ".svg"))
              + Sha256.hex(drawings.resolve(name + ".png"))
          : table;
    } catch (NoSuchFileException e) {
      return "";
    }
  }

  @Override
  public void accept(TranslatedGraph graph, Findings<CatalogueRun.Line> line) throws IOException {
    String name = names.of(graph.entry().graph());
    StringBuilder hashes = new StringBuilder();
    hashes.append(
        write(
            graphs.resolve(name + ".csv"),
            CatalogueTables.graphText(graph).getBytes(StandardCharsets.UTF_8)));
    if (choices.figures()) {
      Figure figure = GraphFigure.of(graph, translation.origin());
      hashes.append(
          write(drawings.resolve(name + ".svg"), figure.svg().getBytes(StandardCharsets.UTF_8)));
      hashes.append(write(drawings.resolve(name + ".png"), figure.png()));
    }
    if (exampleNames.contains(graph.entry().graph())) {
      kept.put(graph.entry().graph(), graph);
    }
    journal.note(line, hashes.toString());
  }

  private static String write(Path file, byte[] bytes) throws IOException {
    Files.write(file, bytes);
    return Sha256.hex(bytes);
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
   * @param record of the run
   * @throws IOException when something cannot be written
   */
  public void finish(Findings<CatalogueRun.Outcome> outcome, RunRecord record) throws IOException {
    journal.close();
    removeLeftOvers(outcome.value());
    CatalogueTables.writeSummary(outcome.value(), folder.resolve("summary.csv"));
    CatalogueTables.writeHandling(outcome.value(), folder.resolve("handling.csv"));
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
    Files.deleteIfExists(folder.resolve(GraphJournal.FILE));
  }

  /** What an earlier, unfinished run left of graphs that are no longer in the catalogue. */
  private void removeLeftOvers(CatalogueRun.Outcome outcome) throws IOException {
    if (outcome.resumed() == 0) {
      return;
    }
    Set<String> wanted = new java.util.HashSet<>();
    outcome.lines().forEach(l -> wanted.add(names.of(l.entry().graph())));
    removeOthers(graphs, wanted);
    if (choices.figures()) {
      removeOthers(drawings, wanted);
    }
  }

  private static void removeOthers(Path place, Set<String> wanted) throws IOException {
    try (java.util.stream.Stream<Path> files = Files.list(place)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        String name = place.relativize(file).toString();
        if (!wanted.contains(name.substring(0, name.lastIndexOf('.')))) {
          Files.delete(file);
        }
      }
    }
  }

  /**
   * Forgets what was noted, when nothing came out that a later run could go on with.
   *
   * @throws IOException when the disk refuses
   */
  public void discard() throws IOException {
    journal.close();
    Files.deleteIfExists(folder.resolve(GraphJournal.FILE));
  }

  @Override
  public void close() throws IOException {
    journal.close();
  }
}
