package org.twinrig.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ExampleChoice;
import org.twinrig.report.html.ExplainPage;
import org.twinrig.translation.TranslatedGraph;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig explain}: one page for the readers of the lab's graphs. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description =
        "Writes one page that tells the readers of the lab's graphs what changed and what may be"
            + " compared.")
final class ExplainCommand implements Callable<Integer>, WithCommonOptions {
  /** What the page is called where only a folder is named. */
  static final String FILE = "explained.html";

  @Parameters(
      paramLabel = "STUDY_DIR",
      description = "The folder of the study, with its study.yaml.")
  private Path study;

  @Option(
      names = "--out",
      paramLabel = "FILE_OR_DIR",
      converter = PagePlace.Converter.class,
      description =
          "Where the page goes: a file whose name ends in .html or .htm, or else a folder, made if"
              + " missing, that gets "
              + FILE
              + " (default: STUDY_DIR/"
              + FILE
              + ").")
  private PagePlace out;

  @Mixin private DataRoots dataRoots;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  ExplainCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput, CannotWrite {
    if (out != null) {
      out.checkFolder();
      if (out.folderIsThere()) {
        page(out.file()).check();
      }
    }
    StudySteps steps = StudySteps.read(study, StudySteps.Way.plain(dataRoots), "explain", common);
    Path place = out == null ? steps.studyFolder().resolve(FILE) : out.file();
    if (out != null) {
      out.makeFolder();
    }
    page(place)
        .write(
            file -> Files.writeString(file, page(steps.outcome(), common), StandardCharsets.UTF_8));
    common.out().println("Page for readers: " + place);
    return 0;
  }

  /** The page of a study; says what was wrong with the catalogue it takes its example from. */
  static String page(StudyOutcome outcome, CommonOptions common) {
    Findings<Optional<TranslatedGraph>> example =
        new ExampleChoice(outcome, common.threads()).graph();
    // A catalogue that cannot be read costs the page its example only.
    example.problems().stream()
        .filter(p -> p.kind() != Problem.Kind.NOTE)
        .forEach(p -> common.err().println(p.text()));
    return ExplainPage.html(outcome, example.value());
  }

  private static OutputPage page(Path place) {
    return new OutputPage(place, ExplainPage::isAsWritten);
  }
}
