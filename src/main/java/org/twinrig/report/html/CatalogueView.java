package org.twinrig.report.html;

import java.util.List;

/**
 * The report of a re-expressed catalogue, as the template sees it.
 *
 * @param title of the study
 * @param lead the count in words
 * @param refused how many graphs were refused; empty when none was
 * @param warnings what the study has too little evidence for, one sentence each
 * @param againRule which graphs the re-measure list holds
 * @param again the re-measure list, worst first
 * @param worth units that would help the other graphs most, and how that is computed
 * @param others what may be published, with marks before without
 * @param overview kinds by decision; without rows when nothing was re-expressed
 * @param zones what became of the zones of the study
 * @param compensated what references did to graphs; without rows when no graph was compensated
 * @param rules how decisions are taken and graphs are handled
 * @param legend how to read the marks
 * @param examples drawings
 * @param problems met while reading
 * @param cautions sentences
 * @param fingerprint of the study
 */
public record CatalogueView(
    String title,
    String lead,
    String refused,
    List<String> warnings,
    String againRule,
    Part again,
    Worth worth,
    List<Part> others,
    Sheet overview,
    Sheet zones,
    Sheet compensated,
    List<String> rules,
    Legend legend,
    List<Plate> examples,
    ProblemList problems,
    List<String> cautions,
    String fingerprint) {

  /**
   * The graphs with one decision.
   *
   * @param count how many there are, in words
   * @param sheet the first of them
   * @param more how many are left to summary.csv; empty when none
   */
  public record Part(String count, Sheet sheet, String more) {}

  /**
   * Units worth measuring on both fixtures.
   *
   * @param howComputed in words
   * @param sheet the units; without rows when there is none to choose from
   */
  public record Worth(String howComputed, Sheet sheet) {}
}
