package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translator;

/**
 * Chooses the old graph that shows readers what re-expressing does: of the first raw graph of each
 * kind in the catalogue the one with most kinds of marks, the earlier one of several alike; without
 * such a graph, the first unit of a kind of the study, chosen alike. Only kinds with enough units
 * are looked at, and nothing that is doubted and not answered is shown.
 */
public record ExampleChoice(StudyOutcome outcome, int threads) {
  /**
   * What the page for readers takes from old graphs.
   *
   * @param graph the example; nothing when no kind has enough units, or all are doubted
   * @param heldBack how many graphs of the catalogue are to be checked before they are published
   */
  public record Example(Optional<TranslatedGraph> graph, int heldBack) {}

  /** The example, with what was wrong with the catalogue or the graphs tried. */
  public Findings<Example> example() {
    List<Problem> problems = new ArrayList<>();
    Example example = new Example(Optional.empty(), 0);
    if (outcome.study().catalogue().isPresent()) {
      try {
        example = ofCatalogue(outcome.study().catalogue().get(), problems);
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
    Example found =
        example.graph().isPresent()
            ? example
            : new Example(mostTelling(ofStudy()), example.heldBack());
    return new Findings<>(found, problems);
  }

  private Example ofCatalogue(Path catalogue, List<Problem> problems)
      throws UnusableInput, IOException {
    Findings<CatalogueReader.Catalogue> read =
        CatalogueReader.read(catalogue, catalogue.toString());
    problems.addAll(read.problems());
    Chain chain = Chain.of(outcome.link(threads));
    // What is doubted of a graph may lie in any other one: all are taken through, and none kept.
    List<CatalogueRun.Line> doubted =
        chain
            .run(catalogue, new Findings<>(read.value(), List.of()), threads, (g, came) -> {})
            .value()
            .lines()
            .stream()
            .filter(l -> l.doubts().stream().anyMatch(Doubt::isOpen))
            .toList();
    List<CatalogueEntry> sound =
        read.value().entries().stream()
            .filter(e -> doubted.stream().noneMatch(l -> l.entry().equals(e)))
            .toList();
    List<CatalogueEntry> entries =
        enough().stream().flatMap(k -> firstRaw(k, sound).stream()).toList();
    CatalogueReader.Catalogue few = read.value().with(entries);
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    Findings<CatalogueRun.Outcome> run =
        chain.run(
            catalogue,
            new Findings<>(few, List.of()),
            threads,
            (g, came) -> kept.put(g.entry().graph(), g));
    problems.addAll(run.problems());
    List<TranslatedGraph> graphs =
        entries.stream()
            .filter(e -> kept.containsKey(e.graph()))
            .map(e -> kept.get(e.graph()))
            .toList();
    long held = doubted.stream().filter(l -> l.decision() == Decision.CHECK_FIRST).count();
    return new Example(mostTelling(graphs), (int) held);
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
        .flatMap(k -> firstSound(k).stream().mapToObj(i -> ofUnit(translator, k.paired(), i)))
        .toList();
  }

  /** The first unit of a kind that is not doubted. */
  private OptionalInt firstSound(KindOutcome kind) {
    List<String> units = kind.paired().units();
    return IntStream.range(0, units.size())
        .filter(
            i -> outcome.doubts().stream().noneMatch(d -> d.isOpen() && d.isAbout(units.get(i))))
        .findFirst();
  }

  private static TranslatedGraph ofUnit(Translator translator, PairedUnits kind, int unit) {
    int seatings = kind.from().seatings().get(unit).stream().mapToInt(n -> n).max().orElse(1);
    return translator.applyPinned(
        CatalogueEntry.raw(kind.units().get(unit), kind.kind(), Math.max(1, seatings)),
        kind.from().means().get(unit));
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
