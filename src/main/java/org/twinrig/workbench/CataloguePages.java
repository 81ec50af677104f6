package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Reason;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.translation.CatalogueRun.Line;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.workbench.view.CatalogueView;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.GraphView;
import org.twinrig.workbench.view.Link;

/** Old graphs: those that are sent, and the study's own catalogue. */
final class CataloguePages {
  private static final int MOST_ROWS = 500;
  private static final int MOST_PLATES = 4;

  private final Book book;
  private final Pages pages;
  private final Regraphings regraphings;

  CataloguePages(Book book, Pages pages, Regraphings regraphings) {
    this.book = book;
    this.pages = pages;
    this.regraphings = regraphings;
  }

  /** The columns a table can be sorted by. */
  private static final Map<String, Comparator<Line>> ORDERS = orders();

  private static Map<String, Comparator<Line>> orders() {
    Map<String, Comparator<Line>> orders = new LinkedHashMap<>();
    orders.put("Graph", Comparator.comparing(l -> l.entry().graph()));
    orders.put("Unit", Comparator.comparing(l -> l.entry().unit()));
    orders.put("Kind", Comparator.comparing(l -> l.entry().kind()));
    orders.put("Decision", Comparator.comparing(Line::decision).reversed());
    orders.put("Reliable", Comparator.comparingDouble(l -> l.octaves().reliable()));
    orders.put("Caution", Comparator.comparingDouble(l -> l.octaves().caution()));
    orders.put("Unreliable", Comparator.comparingDouble(l -> l.octaves().unreliable()));
    return java.util.Collections.unmodifiableMap(orders);
  }

  Answer catalogue(Ask ask) throws IOException {
    Leaf leaf = book.leaf();
    return Answer.page(
        pages.fill(
            "catalogue.jte",
            new CatalogueView(
                pages.frame(book, leaf, Frame.Part.CATALOGUE, "Old graphs", "./catalogue"),
                "At most "
                    + Incoming.MOST_FILES
                    + " files of at most "
                    + Incoming.MOST_BYTES_A_FILE / (1024 * 1024)
                    + " MB each.",
                leaf.study().catalogue().map(p -> String.valueOf(p.getFileName())).orElse(""),
                regraphings.last().map(r -> shown(ask, leaf, r)))));
  }

  private CatalogueView.Result shown(Ask ask, Leaf leaf, Regraphing r) {
    CatalogueView.Filter filter =
        new CatalogueView.Filter(
            ask.text("find"),
            ask.text("decision"),
            Arrays.stream(Decision.values()).map(Decision::word).toList(),
            ORDERS.containsKey(ask.text("sort")) ? ask.text("sort") : "");
    List<Line> lines = new ArrayList<>(r.lines().stream().filter(l -> fits(l, filter)).toList());
    if (!filter.sort().isEmpty()) {
      lines.sort(ORDERS.get(filter.sort()));
    }
    List<CatalogueView.Row> rows = lines.stream().limit(MOST_ROWS).map(l -> row(r, l)).toList();
    return new CatalogueView.Result(
        "As the study stood in state " + r.leaf().revision(),
        r.leaf().revision() != leaf.revision(),
        rows.size() + " of " + Numbers.count(r.lines().size(), "graph", "graphs") + " shown",
        filter,
        ORDERS.keySet().stream().map(h -> head(h, filter)).toList(),
        rows,
        lines.stream()
            .limit(MOST_PLATES)
            .flatMap(l -> regraphings.plates(l.entry().graph()).stream())
            .toList(),
        r.assumed(),
        lines.stream()
            .limit(MOST_ROWS)
            .flatMap(l -> l.reasons().stream())
            .distinct()
            .sorted()
            .map(reason -> new CatalogueView.Why(reason.word(), reason.plain()))
            .toList(),
        Repeated.toldOnce(r.problems()).stream().map(Problem::text).toList());
  }

  private static boolean fits(Line line, CatalogueView.Filter filter) {
    String all = line.entry().graph() + "\n" + line.entry().unit() + "\n" + line.entry().kind();
    return all.toLowerCase(Locale.ROOT).contains(filter.text().toLowerCase(Locale.ROOT))
        && (filter.decision().isEmpty() || line.decision().word().equals(filter.decision()));
  }

  private static CatalogueView.Head head(String name, CatalogueView.Filter filter) {
    return new CatalogueView.Head(
        new Link(
            name,
            "./catalogue?sort="
                + name
                + "&find="
                + Pages.query(filter.text())
                + "&decision="
                + Pages.query(filter.decision())
                + "#graphs"),
        name.equals(filter.sort()) ? "ascending" : "none");
  }

  private static CatalogueView.Row row(Regraphing r, Line l) {
    String graph = l.entry().graph();
    boolean kept = r.graphs().containsKey(graph);
    return new CatalogueView.Row(
        new Link(graph, kept ? "./graph?name=" + Pages.query(graph) : ""),
        l.entry().unit(),
        l.entry().kind(),
        l.decision().word(),
        Numbers.fixed(l.octaves().reliable(), 1),
        Numbers.fixed(l.octaves().caution(), 1),
        Numbers.fixed(l.octaves().unreliable(), 1),
        Reason.join(l.reasons()),
        kept ? "./graph.csv?name=" + Pages.query(graph) : "");
  }

  Answer graph(Ask ask) throws IOException, UnusableInput {
    TranslatedGraph graph = found(ask);
    String name = graph.entry().graph();
    List<String> sentences = new ArrayList<>();
    regraphings.last().stream()
        .flatMap(r -> r.lines().stream())
        .filter(l -> l.entry().graph().equals(name))
        .forEach(
            l -> {
              sentences.add("Decision: " + l.decision().word() + ".");
              l.reasons()
                  .forEach(reason -> sentences.add("Marked because " + reason.plain() + "."));
            });
    return Answer.page(
        pages.fill(
            "graph.jte",
            new GraphView(
                pages.frame(
                    book,
                    book.leaf(),
                    Frame.Part.CATALOGUE,
                    name,
                    "./graph?name=" + Pages.query(name)),
                name,
                sentences,
                regraphings.plates(name),
                "./graph.csv?name=" + Pages.query(name))));
  }

  Answer csv(Ask ask) throws UnusableInput {
    TranslatedGraph graph = found(ask);
    String safe = graph.entry().graph().replaceAll("[^A-Za-z0-9_-]+", "-");
    return Answer.download(safe + "-re-expressed.csv", CatalogueResults.GRAPH.csv(graph));
  }

  private TranslatedGraph found(Ask ask) throws UnusableInput {
    return regraphings
        .last()
        .map(r -> r.graphs().get(ask.text("name")))
        .orElseThrow(
            () ->
                new UnusableInput(
                    Problem.fatal(
                        "the page", 0, "there is no such graph", "go back to the old graphs")));
  }

  Answer run(Ask ask) throws UnusableInput {
    Leaf leaf = book.leaf();
    var catalogue =
        leaf.study()
            .catalogue()
            .orElseThrow(
                () ->
                    new UnusableInput(
                        Problem.fatal(
                            "study.yaml",
                            0,
                            "the study names no catalogue",
                            "add `catalogue: catalogue.csv`")));
    return regraphings.begin(
        "Re-expressing the study's catalogue", run -> Regraphing.ofCatalogue(leaf, catalogue, run));
  }
}
