package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.twinrig.analysis.SmoothedStudy;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Translations;

/**
 * Old graphs taken through the study as it stands on one leaf.
 *
 * @param title whose they are
 * @param revision of the leaf
 * @param lines what became of each, in their order
 * @param graphs the first of them as they are now, by name
 * @param problems what was refused, and what the lab should know
 */
record Regraphing(
    String title,
    long revision,
    List<CatalogueRun.Line> lines,
    Map<String, TranslatedGraph> graphs,
    List<Problem> problems) {

  /** So many graphs are kept whole, to be drawn and downloaded. */
  private static final int MOST_KEPT = 1000;

  Regraphing {
    lines = List.copyOf(lines);
    problems = List.copyOf(problems);
  }

  /** Takes the study's own catalogue through it. */
  static Regraphing ofCatalogue(Leaf leaf, Path catalogue, int threads, Work work)
      throws UnusableInput, IOException {
    Path home = catalogue.toRealPath().resolveSibling("");
    String name = String.valueOf(catalogue.getFileName());
    Findings<CatalogueReader.Catalogue> read = CatalogueReader.read(catalogue, name);
    return run(leaf, read, home, new Run("The study's catalogue", threads, work));
  }

  /** What all graphs that were sent have in common. */
  record Sent(String kind, int seatings) {}

  /** Takes graphs that were sent through the study. They lie in a folder of their own meanwhile. */
  static Regraphing ofUploads(
      Leaf leaf, List<Ask.Upload> uploads, Sent sent, int threads, Work work)
      throws UnusableInput, IOException {
    Path folder = Files.createTempDirectory("twinrig-graphs").toRealPath();
    try {
      List<CatalogueEntry> entries = new ArrayList<>();
      List<String> names = names(uploads);
      for (int k = 0; k < uploads.size(); k++) {
        String file = "graph-" + (k + 1);
        Files.write(folder.resolve(file), uploads.get(k).bytes());
        entries.add(
            new CatalogueEntry(
                names.get(k),
                names.get(k),
                sent.kind(),
                file,
                CatalogueEntry.Averaged.overSeatings(sent.seatings()),
                Optional.empty(),
                Optional.of(Smoothing.NONE),
                k + 1));
      }
      Findings<CatalogueReader.Catalogue> all =
          new Findings<>(new CatalogueReader.Catalogue(entries.size(), entries, names), List.of());
      Regraphing done = run(leaf, all, folder, new Run("Graphs that were sent", threads, work));
      return done.named(names);
    } finally {
      delete(folder);
    }
  }

  /** How to run. */
  private record Run(String title, int threads, Work work) {}

  private static Regraphing run(
      Leaf leaf, Findings<CatalogueReader.Catalogue> catalogue, Path home, Run run)
      throws UnusableInput, IOException {
    StudyOutcome outcome = leaf.outcome().orElseThrow(() -> new UnusableInput(leaf.problems()));
    run.work().expect(catalogue.value().entries().size());
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    CatalogueRun.Sink sink =
        new CatalogueRun.Sink() {
          @Override
          public Optional<Findings<CatalogueRun.Line>> finished(CatalogueEntry entry, Path file) {
            run.work().stopIfCancelled();
            return Optional.empty();
          }

          @Override
          public void accept(TranslatedGraph graph, Findings<CatalogueRun.Line> line) {
            if (kept.size() < MOST_KEPT) {
              kept.put(graph.entry().graph(), graph);
            }
            run.work().step();
          }
        };
    Findings<CatalogueRun.Outcome> done =
        new CatalogueRun(translations(outcome, catalogue.value(), run), run.threads())
            .run(catalogue, home, new DataRoot(home), sink);
    return new Regraphing(
        run.title(), leaf.revision(), done.value().lines(), kept, done.problems());
  }

  /** Smoothed graphs go through the study smoothed alike. */
  private static Translations translations(
      StudyOutcome outcome, CatalogueReader.Catalogue catalogue, Run run) {
    Translation own = outcome.translation();
    Translations way = Translations.of(List.of(own));
    TreeSet<Smoothing> smoothings = new TreeSet<>(Comparator.comparingInt(Smoothing::fraction));
    catalogue.entries().forEach(e -> smoothings.add(e.statedSmoothing()));
    for (Smoothing smoothing : smoothings) {
      run.work().stopIfCancelled();
      if (smoothing.widerThan(own.handling().captureSmoothing())) {
        way =
            way.withAlike(smoothing, List.of(SmoothedStudy.of(outcome, smoothing, run.threads())));
      }
    }
    return way;
  }

  /** Problems name a graph as the lab does. */
  private Regraphing named(List<String> names) {
    List<Problem> named = new ArrayList<>();
    for (Problem p : problems) {
      String number = p.source().startsWith("graph-") ? p.source().substring(6) : "";
      named.add(
          number.matches("[0-9]+")
              ? new Problem(
                  p.kind(),
                  names.get(Integer.parseInt(number) - 1),
                  p.line(),
                  p.what().replaceAll(" \\(line [0-9]+ of [a-z ]+\\)$", ""),
                  p.remedy())
              : p);
    }
    return new Regraphing(title, revision, lines, graphs, named);
  }

  /** The files' names without folders; a name that comes twice is numbered. */
  private static List<String> names(List<Ask.Upload> uploads) {
    List<String> names = new ArrayList<>();
    for (Ask.Upload upload : uploads) {
      String plain = upload.name().replaceAll(".*[/\\\\]", "").replaceAll("\\p{Cntrl}", "?");
      String base = plain.isBlank() ? "graph" : plain.strip();
      String name = base;
      for (int k = 2; names.contains(name); k++) {
        name = base + " (" + k + ")";
      }
      names.add(name);
    }
    return names;
  }

  private static void delete(Path folder) throws IOException {
    List<Path> inside;
    try (Stream<Path> files = Files.list(folder)) {
      inside = files.toList();
    }
    for (Path file : inside) {
      Files.delete(file);
    }
    Files.delete(folder);
  }
}
