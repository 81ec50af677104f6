package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.figure.ContinuityFigure;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.CataloguePage;
import org.twinrig.report.html.Page;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.report.table.GraphFileNames;
import org.twinrig.response.Response;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.Decision;
import org.twinrig.translation.GraphPoints;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * A re-expressed catalogue: a table per graph, written as each is made, then what became of them.
 *
 * @param catalogue its name in messages
 * @param examples the first graph of each of a few kinds
 */
public record CatalogueReport(
    String catalogue,
    Translation translation,
    Findings<CatalogueRun.Outcome> outcome,
    List<TranslatedGraph> examples)
    implements Report {
  private static final int MOST_EXAMPLES = 4;

  /** Whether every graph is to be drawn, on how many threads to work, and what day it is. */
  public record Choices(boolean figures, int threads, LocalDate today) {}

  /**
   * Re-expresses a catalogue and writes its graphs.
   *
   * @param folder an empty folder
   * @throws UnusableInput when not one graph comes out, which must not replace earlier results
   */
  public static CatalogueReport of(
      Path folder,
      Chain chain,
      Path table,
      Findings<CatalogueReader.Catalogue> catalogue,
      Choices choices)
      throws IOException, UnusableInput {
    String source = catalogue.value().source();
    List<CatalogueEntry> entries = catalogue.value().entries();
    Translation whole = chain.whole();
    GraphFileNames names = new GraphFileNames(entries.stream().map(CatalogueEntry::graph).toList());
    Files.createDirectories(folder.resolve("translated"));
    Files.createDirectories(folder.resolve("points"));
    if (choices.figures()) {
      Files.createDirectories(folder.resolve("figures"));
    }
    Graphs graphs = new Graphs(folder, whole, names, choices.figures(), examples(entries));
    Findings<CatalogueRun.Outcome> run = chain.run(table, catalogue, choices.threads(), graphs);
    CatalogueRun.Outcome judged = run.value().and(whole.origin().validityPassed(choices.today()));
    Findings<CatalogueRun.Outcome> outcome = new Findings<>(judged, noted(run, source, whole));
    if (outcome.value().lines().isEmpty()) {
      throw nothing(outcome, source);
    }
    return new CatalogueReport(source, whole, outcome, graphs.drawn());
  }

  /** Writes graphs, from several threads at once, and keeps those that are examples. */
  private record Graphs(
      Path folder,
      Translation translation,
      GraphFileNames names,
      boolean figures,
      Map<String, Optional<TranslatedGraph>> examples)
      implements CatalogueRun.Sink {
    @Override
    public void accept(TranslatedGraph graph, Response came) throws IOException {
      String id = graph.entry().graph();
      String table = names.of(id) + ".csv";
      Files.writeString(
          folder.resolve("translated").resolve(table), CatalogueResults.GRAPH.csv(graph));
      Files.writeString(
          folder.resolve("points").resolve(table),
          CatalogueResults.POINTS.csv(GraphPoints.of(graph, came)));
      if (figures) {
        GraphFigure.of(graph, translation.origin(), translation.anchor())
            .write(folder.resolve("figures").resolve(names.of(id)));
      }
      examples.computeIfPresent(id, (e, none) -> Optional.of(graph));
    }

    List<TranslatedGraph> drawn() {
      return examples.values().stream().flatMap(Optional::stream).toList();
    }
  }

  /** Places for the first graph of each of a few kinds, in the order of the catalogue. */
  private static Map<String, Optional<TranslatedGraph>> examples(List<CatalogueEntry> entries) {
    Map<String, String> first = new LinkedHashMap<>();
    entries.forEach(e -> first.putIfAbsent(e.kind(), e.graph()));
    Map<String, Optional<TranslatedGraph>> places = new LinkedHashMap<>();
    first.values().stream().limit(MOST_EXAMPLES).forEach(g -> places.put(g, Optional.empty()));
    return Collections.synchronizedMap(places);
  }

  /** Says once what holds for many graphs. */
  private static List<Problem> noted(
      Findings<CatalogueRun.Outcome> outcome, String source, Translation whole) {
    List<Problem> problems = new ArrayList<>(Repeated.toldOnce(outcome.problems()));
    long raw =
        outcome.value().lines().stream()
            .filter(l -> l.treatment().before().isPresent() && l.treatment().now().isEmpty())
            .count();
    if (raw > 0) {
      String what =
          "%s given raw, because no reference curve of `%s` is known: name it under `references` in"
              + " study.yaml, or with --subtract";
      problems.add(
          Problem.note(
              source,
              0,
              what.formatted(
                  Numbers.count(raw, "compensated graph is", "compensated graphs are"),
                  whole.origin().to())));
    }
    return problems;
  }

  private static UnusableInput nothing(Findings<CatalogueRun.Outcome> outcome, String source) {
    List<Problem> problems = new ArrayList<>(outcome.refused());
    problems.add(
        Problem.fatal(
            source,
            0,
            outcome.value().rows() == 0
                ? "the catalogue lists no graph"
                : "no graph could be re-expressed",
            "nothing was written"
                + (problems.isEmpty() ? "; list old graphs, one a row" : "; mend the rows above")));
    return new UnusableInput(problems);
  }

  /**
   * Notes on the catalogue itself. Those on how each graph's file was taken stand in the report.
   */
  public List<Problem> notes() {
    return outcome.problems().stream()
        .filter(p -> p.kind() == Problem.Kind.NOTE && p.source().equals(catalogue))
        .toList();
  }

  @Override
  public List<String> sentences(Optional<Path> results) {
    return Page.lines(
        "terminal/catalogue.jte",
        Map.of(
            "translation", translation,
            "outcome", outcome.value(),
            "report", Report.page(results)));
  }

  @Override
  public String json(Optional<Path> results) {
    CatalogueRun.Outcome done = outcome.value();
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("graphs", done.rows())
        .put("translated", done.lines().size())
        .put("refused", done.refused())
        .put("publish", CataloguePage.with(Decision.PUBLISH, done.lines()).size())
        .put(
            "publish_with_marks",
            CataloguePage.with(Decision.PUBLISH_WITH_MARKS, done.lines()).size())
        .put("check_first", CataloguePage.with(Decision.CHECK_FIRST, done.lines()).size())
        .put("re_measure", CataloguePage.with(Decision.RE_MEASURE, done.lines()).size());
    results.ifPresent(folder -> root.put("report", folder.resolve("report.html").toString()));
    ArrayNode tooFew = root.putArray("kinds_with_too_few_units");
    translation.kindsWithTooFewUnits().forEach(k -> tooFew.add(k.kind()));
    ArrayNode doubts = root.putArray("doubts");
    done.doubts().stream().map(Doubt::sentence).forEach(doubts::add);
    ArrayNode problems = root.putArray("problems");
    outcome.refused().stream().map(Problem::text).forEach(problems::add);
    ArrayNode notes = root.putArray("notes");
    notes().stream().map(Problem::text).forEach(notes::add);
    return root.toPrettyString();
  }

  /** The old fixture then and now, drawn on the page and apart. */
  private List<Figure> continuity(Path folder) throws IOException {
    List<Figure> figures =
        outcome.value().continuity().stream()
            .flatMap(c -> ContinuityFigure.of(c, translation.origin()).stream())
            .toList();
    if (!figures.isEmpty()) {
      Path drawings = Files.createDirectories(folder.resolve("figures"));
      for (Figure figure : figures) {
        figure.write(drawings.resolve(figure.name()));
      }
    }
    return figures;
  }

  /** Writes all but the graphs. */
  @Override
  public void write(Path folder, RunRecord record, int threads) throws IOException {
    CatalogueResults.SUMMARY.write(folder, outcome.value());
    CatalogueResults.HANDLING.write(folder, outcome.value());
    CatalogueResults.CONTINUITY.write(folder, outcome.value());
    CatalogueResults.DOUBTS.write(folder, outcome.value());
    CatalogueOverview overview = CatalogueOverview.of(translation, outcome.value());
    overview.write(folder);
    List<Figure> drawn =
        Parallel.map(
            examples, threads, g -> GraphFigure.of(g, translation.origin(), translation.anchor()));
    Files.writeString(
        folder.resolve("report.html"),
        CataloguePage.html(translation, outcome, overview, drawn, continuity(folder)));
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
