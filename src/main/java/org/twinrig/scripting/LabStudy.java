package org.twinrig.scripting;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.twinrig.capture.Capture;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.StudyRun;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** A lab's study with its captures read, ready to be analysed. Immutable. */
public final class LabStudy {
  private static final String OTHER_SETTINGS = " with other settings";

  private final Findings<Study> declared;
  private final Findings<List<Capture>> captures;
  private final InputFingerprint fingerprint;
  private final int threads;

  LabStudy(Study study, List<Capture> captures, String fingerprint) {
    this(
        new Findings<>(study, List.of()),
        new Findings<>(List.copyOf(captures), List.of()),
        new InputFingerprint(List.of(), fingerprint),
        Runtime.getRuntime().availableProcessors());
  }

  private LabStudy(
      Findings<Study> declared,
      Findings<List<Capture>> captures,
      InputFingerprint fingerprint,
      int threads) {
    this.declared = declared;
    this.captures = captures;
    this.fingerprint = fingerprint;
    this.threads = threads;
  }

  /**
   * Reads a study: study.yaml, its tables and every capture file. What cannot be read is left out
   * and stands under {@link #problems}.
   *
   * @param dataRoots folders that are confirmed as data roots of the study; needed only where its
   *     {@code data_root} is wider than the folder around it
   * @throws UnusableInput with file, line and remedy when the study cannot be read at all, or none
   *     of its capture files can
   */
  public static LabStudy read(Path folder, Path... dataRoots) throws UnusableInput {
    int threads = Runtime.getRuntime().availableProcessors();
    Findings<Study> study = StudyReader.read(folder, List.of(dataRoots));
    Findings<List<Capture>> captures = CaptureReading.read(study.value(), threads);
    if (captures.value().isEmpty()) {
      throw new UnusableInput(joined(study.problems(), captures.problems()));
    }
    return new LabStudy(
        study, captures, InputFingerprint.of(study.value(), captures.value()), threads);
  }

  /**
   * Reads one curve from a file, whatever delimiter, decimal mark, encoding or order of columns it
   * is written with; or from a mono WAV file of an impulse response. Gives the curve, how the file
   * was understood and what the lab should know about it.
   *
   * @throws UnusableInput with file, line and remedy when it cannot be read in one way only
   */
  public static Reading readCurve(Path file) throws UnusableInput {
    return CaptureFile.read(file, file.toString());
  }

  /** What the lab declared: fixtures, units, captures, settings: the declaration. */
  public Study declared() {
    return declared.value();
  }

  /** What was wrong with the lab's files, and how doubtful ones were taken; in their order. */
  public List<Problem> problems() {
    return joined(declared.problems(), captures.problems());
  }

  /**
   * What the study's inputs are known by: 12 hexadecimal digits, as reports print them; more words
   * after {@link #with}.
   */
  public String fingerprint() {
    return fingerprint.shortText();
  }

  /**
   * The same captures under other settings, to see what a setting does. The lab's files stay as
   * they are; the fingerprint says that the settings are not the lab's.
   *
   * @throws IllegalArgumentException when the change gives other sound settings: captures that are
   *     sound files have been read already
   */
  public LabStudy with(UnaryOperator<Settings> change) {
    Settings settings = declared().settings();
    Settings changed = change.apply(settings);
    if (!changed.sound().equals(settings.sound())) {
      throw new IllegalArgumentException(
          "how sound files are read cannot be changed after reading; change study.yaml");
    }
    if (changed.equals(settings)) {
      return this;
    }
    String name = fingerprint();
    InputFingerprint other =
        new InputFingerprint(
            fingerprint.inputs(), name.endsWith(OTHER_SETTINGS) ? name : name + OTHER_SETTINGS);
    return new LabStudy(declared(declared().withSettings(changed)), captures, other, threads);
  }

  private Findings<Study> declared(Study other) {
    return new Findings<>(other, declared.problems());
  }

  /** The study from its new fixture to its old one: the same captures, to be fitted anew. */
  public LabStudy reversed() {
    return new LabStudy(declared(declared().reversed()), captures, fingerprint, threads);
  }

  /** The same study worked on by another number of threads, 1 or more; the results are the same. */
  public LabStudy withThreads(int other) {
    if (other < 1) {
      throw new IllegalArgumentException("threads must be 1 or more, but is " + other);
    }
    return new LabStudy(declared, captures, fingerprint, other);
  }

  /**
   * Analyses the study: corrects, anchors, screens and pairs the captures, estimates the transfer
   * of every kind and marks it.
   *
   * @throws UnusableInput with the problems of reading as well, when no kind has a unit on both
   *     fixtures
   */
  public StudyResult analyse() throws UnusableInput {
    StudyRun run = StudyRun.of(declared, captures, fingerprint, Optional.empty(), threads);
    return new StudyResult(run.found(), run.problems(), threads);
  }

  private static List<Problem> joined(List<Problem> first, List<Problem> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }
}
