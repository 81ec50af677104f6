package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.internal.AsideFile;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunRecord;
import org.twinrig.report.StudyFolder;
import org.twinrig.report.StudyWords;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** What every command that needs a study does: read it, analyse it, write it. */
final class StudySteps {
  private final Study study;
  private final StudyOutcome outcome;
  private final InputFingerprint fingerprint;
  private final List<Problem> problems;
  private final RunRecord record;
  private final CommonOptions common;

  private StudySteps(
      Study study,
      StudyOutcome outcome,
      InputFingerprint fingerprint,
      List<Problem> problems,
      RunRecord record,
      CommonOptions common) {
    this.study = study;
    this.outcome = outcome;
    this.fingerprint = fingerprint;
    this.problems = problems;
    this.record = record;
    this.common = common;
  }

  /** Reads and analyses a study, and says what was refused on the way. */
  static StudySteps read(Path folder, Way way, String command, CommonOptions common)
      throws UnusableInput {
    return declare(folder, way, command, common).analyse();
  }

  /**
   * How a study is read.
   *
   * @param strict whether one refused capture or row stops everything
   * @param reversed whether it goes from the new fixture to the old one
   * @param dataRoots folders that are confirmed as data roots
   */
  record Way(boolean strict, boolean reversed, List<Path> dataRoots) {
    static Way plain(DataRoots dataRoots) {
      return new Way(false, false, dataRoots.folders());
    }
  }

  /** What the lab declared: enough to know what is read, before the work begins. */
  record Declared(
      Findings<Study> read, Study study, boolean strict, RunRecord record, CommonOptions common) {

    /** Reads the captures and analyses them, and says what was refused on the way. */
    StudySteps analyse() throws UnusableInput {
      List<Problem> problems = new ArrayList<>(read.problems());
      common.progress("Reading " + study.captures().size() + " captures.");
      Findings<List<Capture>> captures = CaptureReading.read(study, common.threads());
      problems.addAll(captures.problems());
      record.lap("read");
      if (strict) {
        refuse(problems);
      }
      InputFingerprint fingerprint = InputFingerprint.of(study, captures.value());
      common.progress("Estimating the transfer.");
      StudyOutcome outcome = analysed(study, captures.value(), fingerprint, problems, common);
      problems.addAll(outcome.problems());
      record.lap("analyse");
      if (strict) {
        refuse(problems);
      }
      common.refusals(problems);
      common.notes(read.problems());
      return new StudySteps(study, outcome, fingerprint, problems, record, common);
    }
  }

  /** Reads what the lab declared. */
  static Declared declare(Path folder, Way way, String command, CommonOptions common)
      throws UnusableInput {
    RunRecord record = new RunRecord(Version.text(), command);
    Findings<Study> read = StudyReader.read(folder, way.dataRoots());
    Study study = way.reversed() ? read.value().reversed() : read.value();
    return new Declared(read, study, way.strict(), record, common);
  }

  /** The outcome; where there is none, what was refused before is said first, as it may be why. */
  private static StudyOutcome analysed(
      Study study,
      List<Capture> captures,
      InputFingerprint fingerprint,
      List<Problem> problems,
      CommonOptions common)
      throws UnusableInput {
    try {
      return Analysis.of(study, captures, fingerprint.shortText(), common.threads());
    } catch (UnusableInput e) {
      List<Problem> all = new ArrayList<>(refused(problems));
      all.addAll(e.problems());
      throw new UnusableInput(all);
    }
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

  Study study() {
    return study;
  }

  Path studyFolder() {
    return study.folder();
  }

  StudyOutcome outcome() {
    return outcome;
  }

  /** Writes the result folder. */
  void write(ResultFolder results) throws UnusableInput {
    write(results, place -> {});
  }

  /** Writes the result folder, with something more in it. */
  void write(ResultFolder results, AsideFile.Writer more) throws UnusableInput {
    common.progress("Writing the report.");
    StudyFolder folder = new StudyFolder(outcome, fingerprint, problems, record, common.threads());
    results.write(
        place -> {
          folder.write(place);
          more.write(place);
          return place;
        });
  }

  /** What was found, one sentence a line, the report's place last. */
  List<String> sentences(Path results) {
    List<String> lines = new ArrayList<>(new StudyWords(outcome).sentences());
    long refused = problems.stream().filter(p -> p.kind() == Problem.Kind.REFUSED).count();
    if (refused > 0) {
      lines.add(
          "Input was refused for "
              + Numbers.count(refused, "reason", "reasons")
              + "; the report lists where and why.");
    }
    long notes = problems.stream().filter(p -> p.kind() == Problem.Kind.NOTE).count();
    if (notes > 0) {
      lines.add(
          Numbers.count(notes, "note", "notes") + " on how files were taken; the report has them.");
    }
    lines.add("Report: " + results.resolve("report.html"));
    return lines;
  }

  String json(Path results) {
    return new StudyWords(outcome).json(results.toString(), problems);
  }
}
