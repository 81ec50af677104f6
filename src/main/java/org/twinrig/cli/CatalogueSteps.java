package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueFolder;
import org.twinrig.report.RunRecord;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;

/** What every command that re-expresses a catalogue does: read it, run it, write it. */
final class CatalogueSteps {
  private final Translation translation;
  private final CommonOptions common;
  private final RunRecord record;

  CatalogueSteps(Translation translation, String command, CommonOptions common) {
    this.translation = translation;
    this.common = common;
    this.record = new RunRecord(Version.text(), command);
  }

  /**
   * How to run.
   *
   * @param strict whether one refused graph stops everything
   * @param figures whether to draw every graph
   */
  record Choices(boolean strict, boolean figures) {}

  /** Re-expresses a catalogue into a result folder; returns what became of it. */
  Findings<CatalogueRun.Outcome> run(Path catalogue, Path out, Choices choices)
      throws UnusableInput, CannotWrite {
    Findings<CatalogueReader.Catalogue> entries =
        CatalogueReader.read(catalogue, catalogue.toString());
    common.progress("Re-expressing " + entries.value().entries().size() + " graphs.");
    Findings<CatalogueRun.Outcome> outcome =
        OutputFolder.write(out, folder -> fill(folder, catalogue, entries, choices));
    common.refusals(outcome.problems());
    return outcome;
  }

  private Findings<CatalogueRun.Outcome> fill(
      Path folder, Path catalogue, Findings<CatalogueReader.Catalogue> entries, Choices choices)
      throws IOException, UnusableInput {
    Path home = catalogue.toRealPath().resolve("..").normalize();
    CatalogueFolder results =
        new CatalogueFolder(
            folder, translation, entries.value().entries(), choices.figures(), common.threads());
    Findings<CatalogueRun.Outcome> outcome =
        new CatalogueRun(translation, Decision.Rule.standard(), common.threads())
            .run(entries, home, new DataRoot(home), results::keep);
    if (choices.strict()) {
      StudySteps.refuse(outcome.problems());
    }
    record.lap("translate");
    results.finish(outcome, record);
    return outcome;
  }
}
