package org.twinrig.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig study}: the whole study. */
@Command(
    name = "study",
    mixinStandardHelpOptions = true,
    description = "Runs a whole study: read, screen, estimate, mark, check, report.")
final class StudyCommand implements Callable<Integer>, WithCommonOptions {

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

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  StudyCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput {
    StudySteps.Declared declared =
        StudySteps.declare(
            study, new StudySteps.Way(strict, false, dataRoots.folders()), "study", common);
    Path results = out == null ? declared.study().folder().resolve("results") : out;
    ResultFolder place =
        common.results(results, ResultFolder.Kind.STUDY, RunInputs.of(declared.study()));
    StudySteps steps = declared.analyse();
    steps.write(place);
    if (json) {
      common.json(steps.json(results));
    } else {
      steps.sentences(results).forEach(common.out()::println);
    }
    return 0;
  }
}
