package org.twinrig.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ExampleChoice;
import org.twinrig.report.StudyRun;
import org.twinrig.report.html.ExplainPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig explain}: one page for the readers of the lab's graphs. */
@Command(
    name = "explain",
    description =
        "Writes one page that tells the readers of the lab's graphs what changed and what may be"
            + " compared.")
final class ExplainCommand extends TwinrigCommand {
  static final String FILE = "explained.html";

  @Parameters(
      paramLabel = "STUDY_DIR",
      description = "The folder of the study, with its study.yaml.")
  private Path study;

  @Option(
      names = "--out",
      paramLabel = "FILE_OR_DIR",
      description =
          "Where the page goes: a file whose name ends in .html or .htm, or else a folder, made if"
              + " missing, that gets "
              + FILE
              + " (default: STUDY_DIR/"
              + FILE
              + ").")
  private PagePlace out;

  @Mixin private DataRoots dataRoots;

  @Override
  public Integer call() throws UnusableInput {
    if (out != null) {
      out.check();
    }
    StudyRun run = DeclaredStudy.of(study, dataRoots.folders, this).analyse(false);
    PagePlace place = out == null ? PagePlace.in(run.study().folder()) : out;
    place.write(
        file ->
            Files.writeString(
                file, page(run.outcome().orElseThrow(), this), StandardCharsets.UTF_8));
    out().println("Page for readers: " + place.file());
    return 0;
  }

  /** The page of a study; says what was wrong with the catalogue it takes its example from. */
  static String page(StudyOutcome outcome, TwinrigCommand command) {
    Findings<ExampleChoice.Example> example =
        new ExampleChoice(outcome, command.threads()).example();
    // A catalogue that cannot be read costs the page its example only.
    example.problems().stream()
        .filter(p -> p.kind() != Problem.Kind.NOTE)
        .forEach(p -> command.err().println(p.text()));
    return ExplainPage.html(outcome, example.value().graph(), example.value().heldBack());
  }
}
