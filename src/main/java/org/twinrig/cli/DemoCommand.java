package org.twinrig.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code twinrig demo}: the main job on the demonstration's data. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Runs the demonstration study and re-expresses its back catalogue.")
final class DemoCommand implements Callable<Integer>, WithCommonOptions {
  /** Set by the launcher: the folder it stands in. */
  static final String HOME = "twinrig.home";

  /** Set by the launcher where the program is installed: the folder results go below. */
  static final String RESULTS = "twinrig.results";

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Where results go (default: out/demo beside the launcher of a checkout,"
              + " out/demo in the current folder if the program is installed).")
  private Path out;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  DemoCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput {
    Path home = Path.of(System.getProperty(HOME, "."));
    Path study = home.resolve("studies").resolve("plate-to-head");
    if (!Files.isDirectory(study)) {
      throw new UnusableInput(
          Problem.fatal(
              study.toString(),
              0,
              "the demonstration study is not here",
              "start the program with its launcher, from a complete checkout"));
    }
    Path results = out == null ? resultsBelow(home).resolve("demo") : out;
    StudySteps.Declared declared =
        StudySteps.declare(study, new StudySteps.Way(false, false, List.of(home)), "demo", common);
    RunInputs inputs = RunInputs.of(declared.study());
    ResultFolder studyResults =
        common.results(results.resolve("study"), ResultFolder.Kind.STUDY, inputs);
    ResultFolder catalogueResults =
        common.results(results.resolve("catalogue"), ResultFolder.Kind.CATALOGUE, inputs);
    StudySteps steps = declared.analyse();
    String page = ExplainCommand.page(steps.outcome(), common);
    steps.write(
        studyResults,
        folder ->
            Files.writeString(folder.resolve(ExplainCommand.FILE), page, StandardCharsets.UTF_8));
    steps.sentences(results.resolve("study")).forEach(common.out()::println);
    common
        .out()
        .println("Page for readers: " + results.resolve("study").resolve(ExplainCommand.FILE));
    common.out().println();
    new CatalogueSteps(Legs.of(steps.outcome()), "demo", common)
        .run(
            CatalogueSteps.Listed.of(steps.study().catalogue().orElseThrow()),
            catalogueResults,
            CatalogueSteps.Choices.plain())
        .sentences()
        .forEach(common.out()::println);
    return 0;
  }

  private static Path resultsBelow(Path home) {
    String folder = System.getProperty(RESULTS);
    return folder == null ? home.resolve("out") : Path.of(folder);
  }
}
