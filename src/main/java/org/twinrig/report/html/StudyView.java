package org.twinrig.report.html;

import java.util.List;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.figure.StudyDrawings.Sort;

/**
 * The report of a study, as the template sees it.
 *
 * @param title the study's title
 * @param lead what was done
 * @param entry what went in and what did not
 * @param verdicts one sentence per kind
 * @param octaves how many octaves carry each mark
 * @param legend how to read the marks
 * @param zonesLead what a zone is, and what its table says
 * @param zonesHowToRead where the ranges of edges come from, and how far they hold
 * @param zones one table per kind
 * @param errorsHowToRead how to read the errors
 * @param errors on units that were left out
 * @param budget where the error comes from
 * @param screened which captures and units were doubted, by whom and why
 * @param sessions the calibrator and the check unit, session by session
 * @param repeatability how far seatings scatter, and what more of them buy
 * @param resonances one sentence per kind and shape
 * @param evidence whether the study supports its use
 * @param figures drawings, in their places
 * @param closing what every study's report ends with
 */
public record StudyView(
    String title,
    String lead,
    Entry entry,
    List<String> verdicts,
    Sheet octaves,
    Legend legend,
    String zonesLead,
    String zonesHowToRead,
    List<KindZones> zones,
    String errorsHowToRead,
    Sheet errors,
    Budget budget,
    Screened screened,
    Sessions sessions,
    Repeatability repeatability,
    List<String> resonances,
    EvidenceView evidence,
    Figures figures,
    Closing closing) {

  /**
   * What went in and what did not, in short.
   *
   * @param units how many units enter the estimates, and what became of the others
   * @param screening how many captures were doubted and left out
   * @param problems how much was refused; empty when nothing was
   */
  public record Entry(String units, String screening, String problems) {}

  /**
   * The zones of one kind.
   *
   * @param kind its name
   * @param sheet its zones
   */
  public record KindZones(String kind, Sheet sheet) {}

  /**
   * The error budget.
   *
   * @param howToRead what it is the budget of, and how to read it
   * @param sheet one row per kind and region
   * @param checks what the Monte Carlo run said, one sentence per kind
   */
  public record Budget(List<String> howToRead, Sheet sheet, List<String> checks) {}

  /**
   * The sessions.
   *
   * @param howToRead what was done with them, and how to read it
   * @param sheet one row per session
   * @param findings one sentence per session out of control or fixture without limits
   */
  public record Sessions(List<String> howToRead, Sheet sheet, List<String> findings) {}

  /**
   * Scatter between seatings.
   *
   * @param howToRead what the tables hold
   * @param scatter one row per kind and region
   * @param seatings one row per kind and region
   */
  public record Repeatability(String howToRead, Sheet scatter, Sheet seatings) {}

  /**
   * What screening found.
   *
   * @param lead how many captures were doubted
   * @param rules what becomes of them
   * @param effects what leaving them out, or in, does to the mean transfer
   * @param units what was found about units
   * @param sheet one row per capture
   */
  public record Screened(
      String lead, String rules, List<String> effects, List<String> units, Sheet sheet) {}

  /**
   * The drawings.
   *
   * @param transfer the mean transfer
   * @param captures of one unit a kind
   * @param errors on units that were left out
   * @param budget where the error comes from
   * @param sessions the drift charts
   * @param repeatability how far seatings scatter
   */
  public record Figures(
      List<Plate> transfer,
      List<Plate> captures,
      List<Plate> errors,
      List<Plate> budget,
      List<Plate> sessions,
      List<Plate> repeatability) {
    static Figures of(StudyDrawings f) {
      return new Figures(
          Plate.of(f.of(Sort.TRANSFER)),
          Plate.of(f.of(Sort.CAPTURES)),
          Plate.of(f.of(Sort.ERROR)),
          Plate.of(f.of(Sort.BUDGET)),
          Plate.of(f.of(Sort.DRIFT)),
          Plate.of(f.of(Sort.REPEATABILITY)));
    }
  }

  /**
   * The end of the report.
   *
   * @param method what was computed
   * @param sources where the method comes from
   * @param settings in force
   * @param inputs and their checksums
   * @param inputsTitle how many there are
   * @param fingerprint of all of them
   * @param problems met while reading
   * @param cautions for readers
   */
  public record Closing(
      List<String> method,
      List<String> sources,
      Sheet settings,
      Sheet inputs,
      String inputsTitle,
      String fingerprint,
      ProblemList problems,
      List<String> cautions) {}
}
