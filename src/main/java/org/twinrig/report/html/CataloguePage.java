package org.twinrig.report.html;

import java.util.List;
import org.twinrig.problem.Findings;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;

/** The report of a re-expressed catalogue. */
public final class CataloguePage {
  private CataloguePage() {}

  /**
   * Writes the report.
   *
   * @param translation what was applied
   * @param outcome what became of the catalogue
   * @param overview the catalogue seen from above
   * @param examples a few drawings
   * @return one self-contained page
   */
  public static String html(
      Translation translation,
      Findings<CatalogueRun.Outcome> outcome,
      CatalogueOverview overview,
      List<Figure> examples) {
    List<CatalogueRun.Line> lines = outcome.value().lines();
    CatalogueView view =
        new CatalogueView(
            translation.origin().title(),
            CatalogueRules.lead(translation, outcome.value()),
            CatalogueRules.refused(outcome.value()),
            TooFewUnits.sentences(translation),
            CatalogueRules.again(translation.handling().publishing()),
            GraphSheet.again(lines, translation),
            OverviewSheets.worth(overview, translation),
            List.of(
                GraphSheet.published(Decision.PUBLISH_WITH_MARKS, lines),
                GraphSheet.published(Decision.PUBLISH, lines)),
            KindByDecision.of(lines),
            OverviewSheets.zones(overview),
            OverviewSheets.compensated(lines),
            CatalogueRules.of(translation, lines),
            Legend.of(translation.tolerance(), translation.confidence()),
            Plate.of(examples),
            ProblemList.of(outcome.problems()),
            Cautions.all(),
            translation.origin().fingerprint());
    return Page.fill("catalogue.jte", view);
  }
}
