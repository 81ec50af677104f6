package org.twinrig.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueReport;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunRecord;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.Chain;

/**
 * A catalogue re-expressed into a result folder.
 *
 * @param strict whether one refused graph stops everything
 * @param figures whether to draw every graph
 * @param today the day that a study's validity is held against
 */
record CatalogueTranslation(
    TwinrigCommand command, Chain chain, boolean strict, boolean figures, LocalDate today) {
  private static final int WORTH_TIMING = 1000;

  /** Runs, says what was refused, and gives back what became of the rest. */
  CatalogueReport into(
      ResultFolder place, Path table, Findings<CatalogueReader.Catalogue> catalogue)
      throws UnusableInput {
    RunRecord record = command.record();
    long start = System.nanoTime();
    command.progress(
        "Re-expressing " + Numbers.count(catalogue.value().entries().size(), "graph.", "graphs."));
    var choices = new CatalogueReport.Choices(figures, command.threads(), today);
    CatalogueReport report =
        place.write(
            folder -> {
              CatalogueReport made = CatalogueReport.of(folder, chain, table, catalogue, choices);
              if (strict) {
                DeclaredStudy.refuse(made.outcome().problems());
              }
              record.lap("translate");
              made.write(folder, record, command.threads());
              return made;
            });
    command.refusals(report.outcome().problems());
    command.notes(report.notes());
    int graphs = report.outcome().value().lines().size();
    double seconds = (System.nanoTime() - start) / 1e9;
    if (graphs >= WORTH_TIMING) {
      command.remark(
          String.format(
              Locale.ROOT,
              "%d graphs in %.1f s: %.0f a second.",
              graphs,
              seconds,
              graphs / seconds));
    }
    return report;
  }
}
