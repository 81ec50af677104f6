package org.twinrig.report.html;

import java.util.List;

/**
 * What the report of a comparison shows.
 *
 * @param title of the page
 * @param lead what is compared
 * @param verdicts one per kind and two studies
 * @param remarks what holds beside them
 * @param octaves how much of the axis is different, equivalent or neither
 * @param figures one per kind and two studies
 * @param combined all studies together, by region
 * @param method how it was computed
 * @param studies their fingerprints
 * @param cautions as in every report
 */
public record ComparisonView(
    String title,
    String lead,
    List<String> verdicts,
    List<String> remarks,
    Sheet octaves,
    List<Plate> figures,
    Sheet combined,
    List<String> method,
    Sheet studies,
    List<String> cautions) {
  /** Copies the lists. */
  public ComparisonView {
    verdicts = List.copyOf(verdicts);
    remarks = List.copyOf(remarks);
    figures = List.copyOf(figures);
    method = List.copyOf(method);
    cautions = List.copyOf(cautions);
  }
}
