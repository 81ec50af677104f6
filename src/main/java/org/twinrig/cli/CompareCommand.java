package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ComparisonFolder;
import org.twinrig.report.ComparisonWords;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig compare}: studies of the same fixtures against each other. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    description =
        "Compares studies of the same two fixtures band by band: where their mean transfers differ,"
            + " where they are equivalent, and what they say together.")
final class CompareCommand implements Callable<Integer>, WithCommonOptions {
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Parameters(
      paramLabel = "STUDY_DIR",
      arity = "1..*",
      description = "The folders of two or more studies.")
  private List<Path> studies;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Also write comparison.csv, combined.csv, report.html and figures here.")
  private Path out;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private DataRoots dataRoots;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  CompareCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput {
    if (studies.size() < 2) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "name two studies or more: one has nothing to be compared with");
    }
    RunRecord record = new RunRecord(Version.text(), "compare");
    List<StudySteps.Declared> declared = new ArrayList<>();
    RunInputs inputs = RunInputs.of();
    for (Path study : studies) {
      declared.add(StudySteps.declare(study, StudySteps.Way.plain(dataRoots), "compare", common));
      inputs = inputs.and(RunInputs.of(declared.get(declared.size() - 1).study()));
    }
    ResultFolder place =
        out == null ? null : common.results(out, ResultFolder.Kind.COMPARISON, inputs);
    List<StudyOutcome> outcomes = new ArrayList<>();
    for (StudySteps.Declared study : declared) {
      outcomes.add(study.analyse().outcome());
    }
    record.lap("analyse");
    StudyComparison comparison = StudyComparison.of(named(outcomes));
    record.lap("compare");
    if (place != null) {
      place.write(
          folder -> {
            ComparisonFolder.write(folder, comparison, record, common.threads());
            return folder;
          });
    }
    ComparisonWords words = new ComparisonWords(comparison);
    if (json) {
      common.json(words.json());
    } else {
      words.lines().forEach(common.out()::println);
      if (out != null) {
        common.out().println("Report: " + out.resolve("report.html"));
      }
    }
    return 0;
  }

  /** By their titles; where two have the same one, with the folder as well. */
  private List<StudyComparison.Named> named(List<StudyOutcome> outcomes) {
    List<StudyComparison.Named> named = new ArrayList<>();
    for (int k = 0; k < outcomes.size(); k++) {
      String title = outcomes.get(k).study().title();
      long same = outcomes.stream().filter(o -> o.study().title().equals(title)).count();
      String place = studies.get(k).toString();
      named.add(
          new StudyComparison.Named(
              same > 1 ? title + " (" + place + ")" : title, place, outcomes.get(k)));
    }
    return named;
  }
}
