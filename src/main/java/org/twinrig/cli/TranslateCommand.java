package org.twinrig.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueWords;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig translate}: re-expresses a back catalogue. */
@Command(
    name = "translate",
    mixinStandardHelpOptions = true,
    description = "Re-expresses a back catalogue as if it had been measured on the new fixture.")
final class TranslateCommand implements Callable<Integer>, WithCommonOptions {

  @Parameters(
      paramLabel = "STUDY_DIR_OR_translation.json",
      description = "A study's folder, or the translation.json it wrote.")
  private Path study;

  @Option(
      names = "--catalogue",
      paramLabel = "FILE",
      required = true,
      description = "The catalogue.csv that lists the old graphs.")
  private Path catalogue;

  @Option(names = "--out", paramLabel = "DIR", required = true, description = "Where results go.")
  private Path out;

  @Option(names = "--figures", description = "Also draw every graph, into the folder figures.")
  private boolean figures;

  @Option(
      names = "--strict",
      description = "Stop when any graph is refused, instead of going on without it.")
  private boolean strict;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  TranslateCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput, CannotWrite {
    Translation translation =
        Files.isDirectory(study)
            ? StudySteps.read(study, strict, "translate", common).outcome().translation()
            : TranslationFile.read(study, study.toString());
    Findings<CatalogueRun.Outcome> outcome =
        new CatalogueSteps(translation, "translate", common)
            .run(catalogue, out, new CatalogueSteps.Choices(strict, figures));
    CatalogueWords words = new CatalogueWords(outcome, out);
    if (json) {
      common.out().println(words.json());
    } else {
      words.sentences().forEach(common.out()::println);
    }
    return 0;
  }
}
