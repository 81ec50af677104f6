package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.response.Levels;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translator;

/**
 * Chooses the old graph that shows readers what re-expressing does: of the first raw graph of each
 * kind in the catalogue the one with most kinds of marks, the earlier one of several alike; without
 * such a graph, the first unit of a kind of the study, chosen alike. Only kinds with enough units
 * are looked at.
 */
public record ExampleChoice(StudyOutcome outcome, int threads) {
  /**
   * The example, with what was wrong with the catalogue or the graphs tried; nothing when no kind
   * has enough units.
   */
  public Findings<Optional<TranslatedGraph>> graph() {
    List<Problem> problems = new ArrayList<>();
    List<TranslatedGraph> graphs = new ArrayList<>();
    if (outcome.study().catalogue().isPresent()) {
      try {
        graphs.addAll(ofCatalogue(outcome.study().catalogue().get(), problems));
      } catch (UnusableInput e) {
        problems.addAll(e.problems());
      } catch (IOException e) {
        problems.add(
            Problem.refused(
                outcome.study().catalogue().get().toString(),
                0,
                "the catalogue's folder cannot be read (" + e.getMessage() + ")",
                "make it readable, or leave `catalogue` out of study.yaml"));
      }
    }
    Optional<TranslatedGraph> best = mostTelling(graphs);
    return new Findings<>(best.isPresent() ? best : mostTelling(ofStudy()), problems);
  }

  private List<TranslatedGraph> ofCatalogue(Path catalogue, List<Problem> problems)
      throws UnusableInput, IOException {
    Findings<CatalogueReader.Catalogue> read =
        CatalogueReader.read(catalogue, catalogue.toString());
    problems.addAll(read.problems());
    List<CatalogueEntry> entries =
        enough().stream().flatMap(k -> firstRaw(k, read.value().entries()).stream()).toList();
    CatalogueReader.Catalogue few = read.value().with(entries);
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    Findings<CatalogueRun.Outcome> run =
        Chain.of(outcome.link(threads))
            .run(
                catalogue,
                new Findings<>(few, List.of()),
                threads,
                (g, came) -> kept.put(g.entry().graph(), g));
    problems.addAll(run.problems());
    return entries.stream()
        .filter(e -> kept.containsKey(e.graph()))
        .map(e -> kept.get(e.graph()))
        .toList();
  }

  private Optional<CatalogueEntry> firstRaw(KindOutcome kind, List<CatalogueEntry> entries) {
    return entries.stream()
        .filter(e -> e.kind().equals(kind.kind()) && e.subtracted().isEmpty())
        .filter(
            e ->
                !e.statedSmoothing().widerThan(outcome.translation().handling().captureSmoothing()))
        .findFirst();
  }

  private List<KindOutcome> enough() {
    return outcome.kinds().stream()
        .filter(k -> k.paired().units().size() >= outcome.translation().minUnits())
        .toList();
  }

  private List<TranslatedGraph> ofStudy() {
    Translator translator = new Translator(outcome.translation());
    return enough().stream()
        .map(
            k -> {
              String unit = k.paired().units().get(0);
              int seatings =
                  k.paired().from().seatings().get(0).stream().mapToInt(n -> n).max().orElse(1);
              Levels levels = k.paired().from().means().get(0);
              return translator.applyPinned(
                  CatalogueEntry.raw(unit, k.kind(), Math.max(1, seatings)), levels);
            })
        .toList();
  }

  /** The one with most kinds of marks, the first of several alike. */
  private static Optional<TranslatedGraph> mostTelling(List<TranslatedGraph> graphs) {
    return graphs.stream()
        .filter(g -> g.bands().stream().anyMatch(b -> b.predicted().isPresent()))
        .reduce((a, b) -> marks(b) > marks(a) ? b : a);
  }

  private static long marks(TranslatedGraph graph) {
    return Arrays.stream(Mark.values()).filter(m -> graph.octaves(m) > 0).count();
  }
}
