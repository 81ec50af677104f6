package org.twinrig.scripting;

import java.util.List;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/**
 * An old graph on the new fixture, with what to do with it.
 *
 * @param graph the graph, band by band
 * @param decision whether it may be published
 * @param origin what study re-expressed it
 */
public record ReexpressedGraph(
    TranslatedGraph graph, Decision decision, Translation.Origin origin) {

  /**
   * Its bands: old level, level on the new fixture with its prediction interval, mark and reasons.
   *
   * @return rising in frequency
   */
  public List<TranslatedBand> bands() {
    return graph.bands();
  }

  /** Draws the graph with its interval over the old one, as the report does: the drawing. */
  public Figure figure() {
    return GraphFigure.of(graph, origin);
  }

  static ReexpressedGraph of(TranslatedGraph graph, Translation translation) {
    return new ReexpressedGraph(
        graph, Decision.of(graph, translation.handling().publishing()), translation.origin());
  }
}
