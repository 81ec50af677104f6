package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;

/** Which units of a study's catalogue are worth capturing; its graphs are read, none is written. */
final class UnitsOfCatalogue {
  private UnitsOfCatalogue() {}

  /** The units worth capturing, the most useful of a kind first; none without a catalogue. */
  static List<UnitsToMeasure.Choice> worth(StudyOutcome outcome, CommonOptions common)
      throws UnusableInput, CannotWrite {
    if (outcome.study().catalogue().isEmpty()) {
      return List.of();
    }
    Path file = outcome.study().catalogue().get();
    common.progress("Reading the catalogue.");
    try {
      Path home = file.toRealPath().resolve("..").normalize();
      Findings<CatalogueRun.Outcome> run =
          new CatalogueRun(Chain.of(List.of(outcome.translation())), common.threads())
              .run(
                  CatalogueReader.read(file, file.toString()),
                  home,
                  new DataRoot(home),
                  graph -> {});
      common.refusals(run.problems());
      return CatalogueOverview.of(outcome.translation(), run.value()).choices();
    } catch (IOException e) {
      throw new CannotWrite(file + ": could not be read (" + e.getMessage() + ")", e);
    }
  }
}
