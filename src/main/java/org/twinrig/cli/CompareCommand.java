package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ComparisonReport;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig compare}: studies of the same fixtures against each other. */
@Command(
    name = "compare",
    description =
        "Compares studies of the same two fixtures band by band: where their mean transfers differ,"
            + " where they are equivalent, and what they say together.")
final class CompareCommand extends TwinrigCommand {
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

  @Override
  public Integer call() throws UnusableInput {
    refuse(studies.size() < 2, "name two studies or more: one has nothing to be compared with");
    RunRecord record = record();
    List<DeclaredStudy> declared = new ArrayList<>();
    RunInputs inputs = RunInputs.of();
    for (Path study : studies) {
      declared.add(DeclaredStudy.of(study, dataRoots.folders, this));
      inputs = inputs.and(RunInputs.of(declared.get(declared.size() - 1).study()));
    }
    Optional<ResultFolder> place = wanted(out, ResultFolder.Kind.COMPARISON, inputs);
    List<StudyOutcome> outcomes = new ArrayList<>();
    for (DeclaredStudy study : declared) {
      outcomes.add(study.analyse(false).found());
    }
    record.lap("analyse");
    StudyComparison comparison = StudyComparison.of(named(outcomes));
    record.lap("compare");
    give(new ComparisonReport(comparison), place, record, json);
    return 0;
  }

  /** By their titles; where two have the same one, with the folder as well. */
  private List<StudyComparison.Named> named(List<StudyOutcome> outcomes) {
    List<String> titles = outcomes.stream().map(o -> o.study().title()).toList();
    List<StudyComparison.Named> named = new ArrayList<>();
    for (int k = 0; k < outcomes.size(); k++) {
      String title = titles.get(k);
      String place = studies.get(k).toString();
      boolean same = Collections.frequency(titles, title) > 1;
      named.add(
          new StudyComparison.Named(
              same ? title + " (" + place + ")" : title, place, outcomes.get(k)));
    }
    return named;
  }
}
