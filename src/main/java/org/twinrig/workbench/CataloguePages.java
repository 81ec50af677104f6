package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun.Line;
import org.twinrig.translation.TranslatedGraph;

/** Old graphs: the study's own catalogue, and what became of the graphs taken through it last. */
public final class CataloguePages {
  public static final int MOST_ROWS = 500;

  public static final int MOST_PLATES = 4;

  private static final String HERE = "./catalogue#graphs";

  private final Pages pages;
  private final int threads;
  private volatile Optional<TranslatedCatalogue> last = Optional.empty();

  CataloguePages(Pages pages, int threads) {
    this.pages = pages;
    this.threads = threads;
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
    return Collections.unmodifiableMap(orders);
  }

  /** What the table is filtered and sorted by: each empty where it is not. */
  public record Filter(String text, String decision, String sort) {
    public List<String> columns() {
      return List.copyOf(ORDERS.keySet());
    }

    public String sortedBy(String column) {
      String filter = "&find=" + Pages.query(text) + "&decision=" + Pages.query(decision);
      return "./catalogue?sort=" + column + filter + "#graphs";
    }

    public List<Line> of(List<Line> lines) {
      List<Line> fitting = new ArrayList<>(lines.stream().filter(this::fits).toList());
      if (!sort.isEmpty()) {
        fitting.sort(ORDERS.get(sort));
      }
      return fitting;
    }

    private boolean fits(Line line) {
      String all = line.entry().graph() + "\n" + line.entry().unit() + "\n" + line.entry().kind();
      return all.toLowerCase(Locale.ROOT).contains(text.toLowerCase(Locale.ROOT))
          && (decision.isEmpty() || line.decision().word().equals(decision));
    }
  }

  Response catalogue(Request request) throws IOException {
    String sort = ORDERS.containsKey(request.text("sort")) ? request.text("sort") : "";
    Map<String, Object> shown = new HashMap<>();
    shown.put("frame", pages.frame(Frame.Part.CATALOGUE, "Old graphs", "./catalogue"));
    shown.put("filter", new Filter(request.text("find"), request.text("decision"), sort));
    last.ifPresent(done -> shown.put("done", done));
    return Pages.fill("catalogue.jte", shown);
  }

  Response graph(Request request) throws IOException, UnusableInput {
    String name = found(request).entry().graph();
    Frame frame = pages.frame(Frame.Part.CATALOGUE, name, Pages.graph(name, ""));
    return Pages.fill(
        "graph.jte", Map.of("frame", frame, "name", name, "done", last.orElseThrow()));
  }

  Response csv(Request request) throws UnusableInput {
    TranslatedGraph graph = found(request);
    String safe = graph.entry().graph().replaceAll("[^A-Za-z0-9_-]+", "-");
    return Response.text(
        "csv", CatalogueResults.GRAPH.csv(graph), Response.saved(safe + "-re-expressed.csv"));
  }

  private TranslatedGraph found(Request request) throws UnusableInput {
    return last.flatMap(done -> done.graph(request.text("name")))
        .orElseThrow(() -> Request.unusable("there is no such graph", "go back to the old graphs"));
  }

  Response run(Request request) throws UnusableInput {
    Snapshot snapshot = pages.session.snapshot();
    Optional<Path> catalogue = snapshot.study().catalogue();
    if (catalogue.isEmpty()) {
      throw UnusableInput.fatal(
          "study.yaml", 0, "the study names no catalogue", "add `catalogue: catalogue.csv`");
    }
    return pages.begin(
        "Re-expressing the study's catalogue",
        HERE,
        work ->
            last =
                Optional.of(TranslatedCatalogue.ofStudy(snapshot, catalogue.get(), threads, work)));
  }

  /** Answers doubts about graphs in the catalogue's table, and takes the graphs through anew. */
  Response answer(Request request) throws Exception {
    return change(request, DoubtPages.answer(DoubtPages.reason(request)));
  }

  Response openAgain(Request request) throws Exception {
    return change(request, "");
  }

  private Response change(Request request, String reason) throws Exception {
    long shown = request.number("state");
    Optional<TranslatedCatalogue> done =
        last.filter(d -> d.run() == shown)
            .filter(d -> d.snapshot().revision() == pages.session.snapshot().revision());
    if (done.isEmpty()) {
      throw Request.unusable(
          "the study or the graphs are not what the page showed",
          "re-express the graphs again, and answer then");
    }
    Cause cause = DoubtPages.named(done.get().causes(), request);
    // Nothing is written unless what follows from it can begin.
    synchronized (pages.queue) {
      pages.queue.refuseBusy();
      done.get().answer(cause.chosen(request), reason);
      return run(request);
    }
  }

  /** Takes files that were sent through the study as it stands. */
  Response run(Upload upload, Callable<Findings<CatalogueReader.Catalogue>> statement)
      throws UnusableInput {
    Snapshot snapshot = pages.session.snapshot();
    String files = Numbers.count(upload.files().size(), "file", "files");
    return pages.begin(
        "Re-expressing " + files + " that were sent",
        HERE,
        work ->
            last =
                Optional.of(
                    TranslatedCatalogue.ofUpload(snapshot, upload, statement, threads, work)));
  }
}
