package org.twinrig.scripting;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.doubt.Doubt;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.report.html.CataloguePage;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** A back catalogue re-expressed on the new fixture, all of it in memory. Immutable. */
public final class MigratedCatalogue {
  private final Translation translation;
  private final Findings<CatalogueRun.Outcome> outcome;
  private final Map<String, TranslatedGraph> graphs;

  MigratedCatalogue(
      Translation translation,
      Findings<CatalogueRun.Outcome> outcome,
      Map<String, TranslatedGraph> graphs) {
    this.translation = translation;
    this.outcome = outcome;
    this.graphs = Map.copyOf(graphs);
  }

  /** How many graphs the catalogue lists: those that were refused included. */
  public int listed() {
    return outcome.value().rows();
  }

  /** What became of every graph that could be read: in the order of the catalogue. */
  public List<CatalogueRun.Line> lines() {
    return outcome.value().lines();
  }

  /**
   * What became of the graphs with one decision, in the order of the catalogue; those to measure
   * again worst first, by octaves lost, then by octaves unreliable.
   */
  public List<CatalogueRun.Line> lines(Decision decision) {
    return decision == Decision.RE_MEASURE
        ? CataloguePage.worst(lines())
        : CataloguePage.with(decision, lines());
  }

  /**
   * What is claimed of the catalogue and its graphs and contradicted by the data: one doubt for
   * each cause, whatever number of graphs it touches. What is doubted of one graph stands in its
   * line.
   */
  public List<Doubt> doubts() {
    return outcome.value().doubts();
  }

  /**
   * One re-expressed graph, by its name in the catalogue.
   *
   * @throws IllegalArgumentException when no graph of the name was re-expressed
   */
  public ReexpressedGraph graph(String name) {
    return Optional.ofNullable(graphs.get(name))
        .map(
            g ->
                new ReexpressedGraph(g, decision(name), translation.origin(), translation.anchor()))
        .orElseThrow(
            () -> new IllegalArgumentException("no graph `" + name + "` was re-expressed"));
  }

  /** That of the line, which knows what is doubted. */
  private Decision decision(String graph) {
    return lines().stream()
        .filter(l -> l.entry().graph().equals(graph))
        .map(CatalogueRun.Line::decision)
        .findFirst()
        .orElseThrow();
  }

  /**
   * The units that, measured on both fixtures and added to the study, would help the rest of the
   * catalogue most: kinds with too few units first; within a kind the most useful first.
   */
  public List<UnitsToMeasure.Choice> unitsToMeasure() {
    return CatalogueOverview.of(translation, outcome.value()).choices();
  }

  /** Graphs by kind and decision: one entry per kind and decision that occurs. */
  public List<CatalogueOverview.Decided> decisions() {
    return CatalogueOverview.of(translation, outcome.value()).decisions();
  }

  /** What was wrong with the catalogue's files, and every graph that was refused, in order. */
  public List<Problem> problems() {
    return outcome.problems();
  }
}
