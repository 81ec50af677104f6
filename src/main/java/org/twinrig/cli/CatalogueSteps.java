package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueFolder;
import org.twinrig.report.CatalogueWords;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.Translation;

/** What every command that re-expresses a catalogue does: read it, run it, write it. */
final class CatalogueSteps {
  private static final int WORTH_TIMING = 1000;

  private final Legs legs;
  private final CommonOptions common;
  private final RunRecord record;

  CatalogueSteps(Legs legs, String command, CommonOptions common) {
    this.legs = legs;
    this.common = common;
    this.record = new RunRecord(Version.text(), command);
  }

  /**
   * How to run.
   *
   * @param strict whether one refused graph stops everything
   * @param figures whether to draw every graph
   */
  record Choices(boolean strict, boolean figures) {
    static Choices plain() {
      return new Choices(false, false);
    }
  }

  /**
   * A catalogue as it was read.
   *
   * @param table its file
   * @param entries what it lists
   */
  record Listed(Path table, Findings<CatalogueReader.Catalogue> entries) {
    static Listed of(Path table) throws UnusableInput {
      return new Listed(table, CatalogueReader.read(table, table.toString()));
    }

    RunInputs inputs() {
      return RunInputs.ofCatalogue(table, entries.value());
    }
  }

  /** Re-expresses a catalogue into a result folder; says what was refused, returns the rest. */
  CatalogueWords run(Listed listed, ResultFolder out, Choices choices) throws UnusableInput {
    long start = System.nanoTime();
    Findings<CatalogueReader.Catalogue> entries = listed.entries();
    Chain chain = legs.chain(entries.value().smoothings(), common.threads());
    common.progress(
        "Re-expressing " + Numbers.count(entries.value().entries().size(), "graph.", "graphs."));
    Findings<CatalogueRun.Outcome> outcome =
        out.write(folder -> fill(folder, new Job(listed.table(), entries, chain, choices)));
    CatalogueWords words =
        new CatalogueWords(entries.value().source(), outcome, chain.whole(), out.target());
    common.refusals(outcome.problems());
    common.notes(words.notes());
    speed(outcome.value(), (System.nanoTime() - start) / 1e9);
    return words;
  }

  private record Job(
      Path catalogue, Findings<CatalogueReader.Catalogue> entries, Chain chain, Choices choices) {}

  private void speed(CatalogueRun.Outcome outcome, double seconds) {
    if (outcome.lines().size() >= WORTH_TIMING) {
      common.remark(
          String.format(
              Locale.ROOT,
              "%d graphs in %.1f s: %.0f a second.",
              outcome.lines().size(),
              seconds,
              outcome.lines().size() / seconds));
    }
  }

  private Findings<CatalogueRun.Outcome> fill(Path folder, Job job)
      throws IOException, UnusableInput {
    Path home = job.catalogue.toRealPath().resolve("..").normalize();
    DataRoot root = new DataRoot(home);
    Translation whole = job.chain.whole();
    CatalogueFolder results =
        new CatalogueFolder(
            folder,
            whole,
            job.entries.value(),
            new CatalogueFolder.Choices(job.choices.figures(), common.threads()));
    Findings<CatalogueRun.Outcome> run =
        new CatalogueRun(job.chain, common.threads()).run(job.entries, home, root, results);
    Findings<CatalogueRun.Outcome> outcome = noted(run, job.entries.value().source(), whole);
    if (outcome.value().lines().isEmpty()) {
      throw nothing(outcome, job.entries.value().source());
    }
    if (job.choices.strict()) {
      StudySteps.refuse(outcome.problems());
    }
    record.lap("translate");
    results.finish(outcome, record);
    return outcome;
  }

  /** A catalogue of which nothing came out must not take the place of earlier results. */
  private static UnusableInput nothing(Findings<CatalogueRun.Outcome> outcome, String source) {
    List<Problem> problems = new ArrayList<>(outcome.refused());
    problems.add(
        Problem.fatal(
            source,
            0,
            outcome.value().rows() == 0
                ? "the catalogue lists no graph"
                : "no graph could be re-expressed",
            "nothing was written"
                + (problems.isEmpty() ? "; list old graphs, one a row" : "; mend the rows above")));
    return new UnusableInput(problems);
  }

  /** Says once what holds for many graphs. */
  private static Findings<CatalogueRun.Outcome> noted(
      Findings<CatalogueRun.Outcome> outcome, String source, Translation whole) {
    List<Problem> problems = new ArrayList<>(Repeated.toldOnce(outcome.problems()));
    long raw =
        outcome.value().lines().stream()
            .filter(l -> l.treatment().before().isPresent() && l.treatment().now().isEmpty())
            .count();
    if (raw > 0) {
      problems.add(
          Problem.note(
              source,
              0,
              Numbers.count(raw, "compensated graph is", "compensated graphs are")
                  + " given raw, because no reference curve of `"
                  + whole.origin().to()
                  + "` is known: name it under `references` in study.yaml, or with --subtract"));
    }
    return new Findings<>(outcome.value(), problems);
  }
}
