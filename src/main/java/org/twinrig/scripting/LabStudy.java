package org.twinrig.scripting;

import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** A lab's study with its captures read, ready to be analysed. Immutable. */
public final class LabStudy {
  private static final String OTHER_SETTINGS = " with other settings";

  private final Study study;
  private final List<Capture> captures;
  private final String fingerprint;
  private final List<Problem> problems;
  private final int threads;

  LabStudy(Study study, Findings<List<Capture>> captures, String fingerprint) {
    this(study, captures, fingerprint, Runtime.getRuntime().availableProcessors());
  }

  private LabStudy(Study study, Findings<List<Capture>> captures, String fingerprint, int threads) {
    this.study = study;
    this.captures = List.copyOf(captures.value());
    this.problems = List.copyOf(captures.problems());
    this.fingerprint = fingerprint;
    this.threads = threads;
  }

  /**
   * Reads a study: study.yaml, its tables and every capture file.
   *
   * @param folder the study's folder
   * @param dataRoots folders that are confirmed as data roots of the study; needed only where its
   *     {@code data_root} is wider than the folder around it
   * @return the study; what could not be read is left out and stands under {@link #problems}
   * @throws UnusableInput with file, line and remedy when the study cannot be read at all, or none
   *     of its capture files can
   */
  public static LabStudy read(Path folder, Path... dataRoots) throws UnusableInput {
    int threads = Runtime.getRuntime().availableProcessors();
    Findings<Study> study = StudyReader.read(folder, List.of(dataRoots));
    Findings<List<Capture>> captures = CaptureReading.read(study.value(), threads);
    List<Problem> problems = joined(study.problems(), captures.problems());
    if (captures.value().isEmpty()) {
      throw new UnusableInput(problems);
    }
    String fingerprint = InputFingerprint.of(study.value(), captures.value()).shortText();
    return new LabStudy(
        study.value(), new Findings<>(captures.value(), problems), fingerprint, threads);
  }

  /**
   * Reads one curve from a file, whatever delimiter, decimal mark, encoding or order of columns it
   * is written with; or from a mono WAV file of an impulse response.
   *
   * @return the curve, how the file was understood and what the lab should know about it
   * @throws UnusableInput with file, line and remedy when it cannot be read in one way only
   */
  public static Reading readCurve(Path file) throws UnusableInput {
    return CaptureFile.read(file, file.toString());
  }

  /** What the lab declared: fixtures, units, captures, settings: the declaration. */
  public Study declared() {
    return study;
  }

  /**
   * What was wrong with the lab's files, and how doubtful ones were taken.
   *
   * @return in the order of the files and their lines; empty for sound files
   */
  public List<Problem> problems() {
    return problems;
  }

  /**
   * What the study's inputs are known by.
   *
   * @return 12 hexadecimal digits, as reports print them; more words after {@link #with}
   */
  public String fingerprint() {
    return fingerprint;
  }

  /**
   * The same captures under other settings, to see what a setting does. The lab's files stay as
   * they are; the fingerprint says that the settings are not the lab's.
   *
   * @param change gives the settings to use for those of study.yaml
   * @return the changed study
   * @throws IllegalArgumentException when the change gives other sound settings: captures that are
   *     sound files have been read already
   */
  public LabStudy with(UnaryOperator<Settings> change) {
    Settings changed = change.apply(study.settings());
    if (!changed.sound().equals(study.settings().sound())) {
      throw new IllegalArgumentException(
          "how sound files are read cannot be changed after reading; change study.yaml");
    }
    return changed.equals(study.settings())
        ? this
        : new LabStudy(
            study.withSettings(changed),
            new Findings<>(captures, problems),
            changedFingerprint(),
            threads);
  }

  private String changedFingerprint() {
    return fingerprint.endsWith(OTHER_SETTINGS) ? fingerprint : fingerprint + OTHER_SETTINGS;
  }

  /**
   * The study from its new fixture to its old one.
   *
   * @return the reversed study; the same captures, fitted anew by {@link #analyse}
   */
  public LabStudy reversed() {
    return new LabStudy(study.reversed(), new Findings<>(captures, problems), fingerprint, threads);
  }

  /**
   * The same study worked on by another number of threads. Results do not depend on it; without
   * this it is the number of processors.
   *
   * @param other 1 or more
   */
  public LabStudy withThreads(int other) {
    if (other < 1) {
      throw new IllegalArgumentException("threads must be 1 or more, but is " + other);
    }
    return new LabStudy(study, new Findings<>(captures, problems), fingerprint, other);
  }

  /**
   * Analyses the study: corrects, anchors, screens and pairs the captures, estimates the transfer
   * of every kind and marks it.
   *
   * @return what was found
   * @throws UnusableInput with the problems of reading as well, when no kind has a unit on both
   *     fixtures
   */
  public StudyResult analyse() throws UnusableInput {
    try {
      StudyOutcome outcome = Analysis.of(study, captures, fingerprint, threads);
      return new StudyResult(outcome, joined(problems, outcome.problems()), threads);
    } catch (UnusableInput e) {
      throw new UnusableInput(joined(problems, e.problems()));
    }
  }

  private static List<Problem> joined(List<Problem> first, List<Problem> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }
}
