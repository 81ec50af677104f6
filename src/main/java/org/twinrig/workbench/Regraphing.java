package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.twinrig.analysis.SmoothedStudy;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.html.CatalogueSentences;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * Old graphs taken through the study as it stands on one leaf.
 *
 * @param leaf they rest on
 * @param lines what became of each, in their order
 * @param graphs the first of them as they are now, by name
 * @param problems what was refused, and what the lab should know
 */
record Regraphing(
    Leaf leaf,
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
  static Regraphing ofCatalogue(Leaf leaf, Path catalogue, Run run)
      throws UnusableInput, IOException {
    Path home = catalogue.toRealPath().resolveSibling("");
    String name = String.valueOf(catalogue.getFileName());
    Findings<CatalogueReader.Catalogue> read = CatalogueReader.read(catalogue, name);
    return run(leaf, read, home, run);
  }

  /** Reads what was said of files. */
  @FunctionalInterface
  interface Reading {
    Findings<CatalogueReader.Catalogue> read() throws UnusableInput, IOException;
  }

  /** Takes files that were sent through the study, and deletes them. */
  static Regraphing ofParcel(Leaf leaf, Parcel parcel, Reading reading, Run run)
      throws UnusableInput, IOException {
    try {
      Findings<CatalogueReader.Catalogue> read = reading.read();
      CatalogueReader.Catalogue placed =
          read.value().with(read.value().entries().stream().map(parcel::placed).toList());
      Regraphing done = run(leaf, new Findings<>(placed, read.problems()), parcel.folder(), run);
      return new Regraphing(
          leaf,
          done.lines(),
          done.graphs(),
          done.problems().stream().map(p -> parcel.named(p, placed)).toList());
    } finally {
      delete(parcel.folder());
    }
  }

  /** What was taken for granted, in the words of the catalogue report. */
  List<String> assumed() {
    return CatalogueSentences.smoothingNotStated(lines).stream().toList();
  }

  /** How to run. */
  record Run(int threads, Work work) {}

  private static Regraphing run(
      Leaf leaf, Findings<CatalogueReader.Catalogue> catalogue, Path home, Run run)
      throws UnusableInput, IOException {
    StudyOutcome outcome = leaf.outcome().orElseThrow(() -> new UnusableInput(leaf.problems()));
    run.work().expect(catalogue.value().entries().size());
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    CatalogueRun.Sink sink =
        graph -> {
          run.work().stopIfCancelled();
          if (kept.size() < MOST_KEPT) {
            kept.put(graph.entry().graph(), graph);
          }
          run.work().step();
        };
    Findings<CatalogueRun.Outcome> done =
        new CatalogueRun(translations(outcome, catalogue.value(), run), run.threads())
            .run(catalogue, home, new DataRoot(home), sink);
    return new Regraphing(leaf, done.value().lines(), kept, done.problems());
  }

  /** Smoothed graphs go through the study smoothed alike. */
  private static Chain translations(
      StudyOutcome outcome, CatalogueReader.Catalogue catalogue, Run run) {
    Translation own = outcome.translation();
    return Chain.of(List.of(own))
        .withAlike(
            catalogue.smoothings(),
            smoothing -> {
              run.work().stopIfCancelled();
              return List.of(SmoothedStudy.of(outcome, smoothing, run.threads()));
            });
  }

  static void delete(Path folder) throws IOException {
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
