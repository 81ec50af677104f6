package org.twinrig.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.StudyRun;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.Chain;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code twinrig demo}: the main job on the demonstration's data. */
@Command(
    name = "demo",
    description = "Runs the demonstration study and re-expresses its back catalogue.")
final class DemoCommand extends TwinrigCommand {
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

  @Override
  public Integer call() throws UnusableInput {
    Path home = Path.of(System.getProperty(HOME, "."));
    Path study = home.resolve("studies").resolve("plate-to-head");
    if (!Files.isDirectory(study)) {
      throw unusable(
          study,
          "the demonstration study is not here",
          "start the program with its launcher, from a complete checkout");
    }
    Path below = Path.of(System.getProperty(RESULTS, home.resolve("out").toString()));
    Path results = out == null ? below.resolve("demo") : out;
    DeclaredStudy declared = DeclaredStudy.of(study, List.of(home), this);
    Path studyPlace = results.resolve("study");
    RunInputs inputs = RunInputs.of(declared.study());
    ResultFolder studyResults = folder(studyPlace, ResultFolder.Kind.STUDY, inputs);
    ResultFolder catalogueResults =
        folder(results.resolve("catalogue"), ResultFolder.Kind.CATALOGUE, inputs);
    StudyRun run = declared.analyse(false);
    String page = ExplainCommand.page(run.found(), this);
    progress("Writing the report.");
    studyResults.write(
        folder -> {
          run.write(folder, declared.record(), threads());
          return Files.writeString(
              folder.resolve(ExplainCommand.FILE), page, StandardCharsets.UTF_8);
        });
    print(run, Optional.of(studyPlace), false);
    out().println("Page for readers: " + studyPlace.resolve(ExplainCommand.FILE));
    out().println();
    Chain chain = Chain.of(run.found().link(threads()));
    Path table = run.study().catalogue().orElseThrow();
    print(
        new CatalogueTranslation(this, chain, false, false, today())
            .into(catalogueResults, table, CatalogueReader.read(table, table.toString())),
        Optional.of(catalogueResults.target()),
        false);
    return 0;
  }
}
