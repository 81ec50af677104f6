package org.twinrig.scripting;

import java.util.List;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.response.Anchor;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * An old graph on the new fixture, whether it may be published, and what study gave it.
 *
 * @param anchor where the study lines levels up
 */
public record ReexpressedGraph(
    TranslatedGraph graph, Decision decision, Translation.Origin origin, Anchor anchor) {

  /** Per band its old level, the new one with its prediction interval, mark and reasons. */
  public List<TranslatedBand> bands() {
    return graph.bands();
  }

  /** Draws the graph with its interval over the old one, as the report does. */
  public Figure figure() {
    return GraphFigure.of(graph, origin, anchor);
  }

  static ReexpressedGraph of(TranslatedGraph graph, Translation translation) {
    return new ReexpressedGraph(
        graph,
        Decision.of(graph, translation.handling().publishing()),
        translation.origin(),
        translation.anchor());
  }
}
