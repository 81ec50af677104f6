package org.twinrig.report.html;

import java.util.List;
import java.util.Map;
import org.twinrig.problem.Findings;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Translation;

/** The report of a re-expressed catalogue. */
public final class CataloguePage {
  private CataloguePage() {}

  /** One self-contained page; the examples are drawings of a few graphs. */
  public static String html(
      Translation translation,
      Findings<CatalogueRun.Outcome> outcome,
      CatalogueOverview overview,
      List<Figure> examples) {
    return Page.fill(
        "catalogue.jte",
        Map.of(
            "translation", translation,
            "outcome", outcome.value(),
            "problems", outcome.problems(),
            "overview", overview,
            "examples", examples));
  }
}
