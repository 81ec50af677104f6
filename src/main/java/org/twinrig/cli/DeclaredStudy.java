package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.RunRecord;
import org.twinrig.report.StudyRun;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/**
 * A study as the lab declared it: enough to know what a run reads, before the work begins.
 *
 * @param record of the run, its clock started before the study was read
 */
record DeclaredStudy(Findings<Study> read, RunRecord record, TwinrigCommand command) {

  static DeclaredStudy of(Path folder, List<Path> dataRoots, TwinrigCommand command)
      throws UnusableInput {
    RunRecord record = command.record();
    return new DeclaredStudy(StudyReader.read(folder, dataRoots), record, command);
  }

  Study study() {
    return read.value();
  }

  DeclaredStudy reversed() {
    return new DeclaredStudy(new Findings<>(study().reversed(), read.problems()), record, command);
  }

  /**
   * Reads the captures and analyses them, and says what was refused on the way.
   *
   * @param strict whether one refused capture or row stops everything
   */
  StudyRun analyse(boolean strict) throws UnusableInput {
    command.progress("Reading " + study().captures().size() + " captures.");
    Findings<List<Capture>> captures = CaptureReading.read(study(), command.threads());
    List<Problem> reading = new ArrayList<>(read.problems());
    reading.addAll(captures.problems());
    record.lap("read");
    if (strict) {
      refuse(reading);
    }
    command.progress("Estimating the transfer.");
    StudyRun run = StudyRun.of(read, captures, Optional.empty(), command.threads());
    if (run.outcome().isEmpty()) {
      // What was refused before may be why, and is said first.
      List<Problem> all = new ArrayList<>(refused(reading));
      all.addAll(run.problems().subList(reading.size(), run.problems().size()));
      throw new UnusableInput(all);
    }
    record.lap("analyse");
    if (strict) {
      refuse(run.problems());
    }
    command.refusals(run.problems());
    command.notes(read.problems());
    return run;
  }

  static void refuse(List<Problem> problems) throws UnusableInput {
    List<Problem> refused = refused(problems);
    if (!refused.isEmpty()) {
      List<Problem> told = new ArrayList<>(Repeated.toldOnce(refused));
      told.add(
          Problem.fatal(
              "--strict",
              0,
              "stopped because input was refused, and nothing was written",
              "mend what is listed above, or leave --strict out"));
      throw new UnusableInput(told);
    }
  }

  private static List<Problem> refused(List<Problem> problems) {
    return problems.stream().filter(p -> p.kind() != Problem.Kind.NOTE).toList();
  }
}
