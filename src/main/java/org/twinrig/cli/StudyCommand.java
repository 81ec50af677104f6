package org.twinrig.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.StudyRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig study}: the whole study. */
@Command(
    name = "study",
    description = "Runs a whole study: read, screen, estimate, mark, check, report.")
final class StudyCommand extends TwinrigCommand {
  @Parameters(
      paramLabel = "STUDY_DIR",
      description = "The folder of the study, with its study.yaml.")
  private Path study;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Where the results go (default: STUDY_DIR/results).")
  private Path out;

  @Option(
      names = "--strict",
      description = "Stop when any capture or row is refused, instead of going on without it.")
  private boolean strict;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private DataRoots dataRoots;

  @Override
  public Integer call() throws UnusableInput {
    DeclaredStudy declared = DeclaredStudy.of(study, dataRoots.folders, this);
    Path results = out == null ? declared.study().folder().resolve("results") : out;
    ResultFolder place = folder(results, ResultFolder.Kind.STUDY, RunInputs.of(declared.study()));
    StudyRun run = declared.analyse(strict);
    progress("Writing the report.");
    give(run, Optional.of(place), declared.record(), json);
    return 0;
  }
}
